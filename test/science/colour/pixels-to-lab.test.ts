import { converter } from 'culori'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { labToSrgb } from '#api/science/colour/lab-to-srgb.ts'
import { isClipped, type PixelSpace, pixelsToLab } from '#api/science/colour/pixels-to-lab.ts'
import chart from '#test/reference/colour/patch-card-24.json' with { type: 'json' }
import reference from '#test/reference/colour/srgb-bradford.json' with { type: 'json' }
import { labOf } from '#test/support/lab-of.ts'

// culori and colorjs.io give the same Lab for each pixel within 5e-5, Display P3 included (the file's note).
describe('pixels of the reference file', () => {
  test.each(reference.pixels)('$space $rgb8', (pixel) => {
    const space = pixel.space as PixelSpace
    for (const white of ['D65', 'D50'] as const) {
      const found = pixelsToLab(pixel.rgb8, { space, white })
      for (const [i, value] of pixel[`Lab_${white}`].entries())
        expect(Math.abs(found[i]! - value)).toBeLessThanOrEqual(reference.tolerance.Lab)
    }
  })
})

test('any pixel is as culori has it, as sRGB and as Display P3, under D65 and D50', () => {
  const toD65 = converter('lab65')
  const toD50 = converter('lab')
  const channel = fc.integer({ min: 0, max: 255 })
  fc.assert(
    fc.property(channel, channel, channel, (r, g, b) => {
      for (const white of ['D65', 'D50'] as const)
        for (const [space, mode] of [
          ['srgb', 'rgb'],
          ['display-p3', 'p3'],
        ] as const) {
          const found = pixelsToLab([r, g, b], { space, white })
          const pixel = { mode, r: r / 255, g: g / 255, b: b / 255 }
          const other = white === 'D65' ? toD65(pixel) : toD50(pixel)
          expect(Math.abs(found[0]! - other.l)).toBeLessThan(1e-3)
          expect(Math.abs(found[1]! - other.a)).toBeLessThan(1e-3)
          expect(Math.abs(found[2]! - other.b)).toBeLessThan(1e-3)
        }
    }),
  )
})

// The chart maker's values, both adapted to D65 in the file: one 8-bit step is about half a ΔE00 at most.
describe('the 24 patches, shown on a screen and read back', () => {
  test.each(chart.patches)('$name', ({ lab_d65_after_2014 }) => {
    const lab = labOf(lab_d65_after_2014)
    const { r, g, b, inGamut } = labToSrgb(lab)
    const [L, a, bStar] = pixelsToLab([r, g, b])
    const off = ciede2000(lab, labOf([L!, a!, bStar!]))
    // Cyan is the one patch that no sRGB screen can show.
    if (inGamut) expect(off).toBeLessThan(0.6)
    else expect(lab_d65_after_2014[1]).toBeLessThan(-20)
  })

  test('all but one are within the range of the screen', () => {
    expect(
      chart.patches.filter(({ lab_d65_after_2014 }) => !labToSrgb(labOf(lab_d65_after_2014)).inGamut),
    ).toHaveLength(1)
  })
})

test('a canvas has a fourth channel, which is passed over', () => {
  expect([...pixelsToLab(Uint8ClampedArray.of(181, 66, 52, 0, 9, 9, 9, 255), { channels: 4 })]).toEqual([
    ...pixelsToLab([181, 66, 52, 9, 9, 9]),
  ])
})

test.each([
  [5, 128, 128, true],
  [6, 249, 128, false],
  [128, 128, 250, true],
  [0, 255, 10, true],
])('%d %d %d is clipped: %j', (r, g, b, clipped) => {
  expect(isClipped(r, g, b)).toBe(clipped)
})

test('half a pixel is refused', () => {
  expect(() => pixelsToLab([1, 2])).toThrow(RangeError)
})
