import { expect, test } from 'vitest'
import { chroma, hue } from '#api/science/colour/lab.ts'
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { labOf } from '#test/support/lab-of.ts'

test.each(textilePairs.pairs)('$name: chroma $C_ref and hue $h_ref', (pair) => {
  expect(chroma(labOf(pair.lab_ref))).toBeCloseTo(pair.C_ref, 4)
  expect(hue(labOf(pair.lab_ref))).toBeCloseTo(pair.h_ref, 4)
  expect(hue(labOf(pair.lab_sample))).toBeCloseTo(pair.h_sample, 4)
})

test.each([
  [1, 0, 0],
  [0, 1, 90],
  [-1, 0, 180],
  [-1, -0, 180],
  [0, -1, 270],
  [1, -0, 0],
  [0, 0, 0],
  [-0, -0, 0],
  [-0, 0, 0],
  [1, -1e-20, 0],
])('a* %d, b* %d stands at %d°', (a, b, degrees) => {
  const found = hue({ L: 50, a, b })
  expect(found).toBeCloseTo(degrees, 10)
  expect(found).toBeLessThan(360)
  expect(Object.is(found, -0)).toBe(false)
})
