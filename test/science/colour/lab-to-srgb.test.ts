import { expect, test } from 'vitest'
import { labToSrgb } from '#api/science/colour/lab-to-srgb.ts'
import reference from '#test/reference/colour/srgb-bradford.json' with { type: 'json' }
import { labOf } from '#test/support/lab-of.ts'

const screen = reference.pixels.filter(({ space }) => space === 'srgb')

// culori and colorjs.io give the same Lab for each pixel within 5e-5 (the file's note).
test.each(screen)('the Lab of $rgb8 goes back to it', ({ rgb8, Lab_D65 }) => {
  const { r, g, b, hex, inGamut } = labToSrgb(labOf(Lab_D65))
  expect([r, g, b]).toEqual(rgb8)
  expect(hex).toBe(`#${Buffer.from(rgb8).toString('hex')}`)
  expect(inGamut).toBe(true)
})

// Printed with the project's domain notes: colours of real dyes that no phone can record.
test.each([
  [58, -26, -34],
  [42, -18, -42],
  [55, -38, -28],
])('L* %d, a* %d, b* %d is outside the screen’s range and is held at its edge', (L, a, b) => {
  const shown = labToSrgb({ L, a, b })
  expect(shown.inGamut).toBe(false)
  expect(shown.r).toBe(0)
})

test('the corners of the space stay whole numbers from 0 to 255', () => {
  for (const L of [0, 8, 50, 100])
    for (const a of [-128, 0, 127])
      for (const b of [-128, 0, 127]) {
        const { r, g, b: blue, hex } = labToSrgb({ L, a, b })
        for (const channel of [r, g, blue]) {
          expect(Number.isInteger(channel)).toBe(true)
          expect(channel).toBeGreaterThanOrEqual(0)
          expect(channel).toBeLessThanOrEqual(255)
        }
        expect(hex).toMatch(/^#[0-9a-f]{6}$/)
      }
})

test('L* below 8 follows the straight part of the scale', () => {
  // Below L* 8 is Y = L* ÷ 903.3: L* 2.98464 is the grey of about 10, 11, 12 in the reference.
  expect(labToSrgb({ L: 2.98464, a: -0.11692, b: -0.50591 })).toMatchObject({ r: 10, g: 11, b: 12 })
})
