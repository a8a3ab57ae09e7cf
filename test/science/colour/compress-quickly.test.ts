import { expect, test } from 'vitest'
import { compressQuickly } from '#api/science/colour/compress-quickly.ts'
import { compress } from '#api/science/colour/xyz-to-lab.ts'

test('it is the cube root of the L*a*b* scale, from far below black to beyond white', () => {
  const epsilon = 216 / 24389
  const places = [-1, -0.001, 0, 0.008, epsilon, epsilon + 1e-12, 0.00886, 0.125, 1, 1.0099999, 1.01, 1.5, 8]
  for (let ratio = 0; ratio < 1.02; ratio += 0.00037) places.push(ratio)
  for (const ratio of places) expect(Math.abs(compressQuickly(ratio) - compress(ratio))).toBeLessThan(1e-11)
  expect(compressQuickly(Number.NaN)).toBeNaN()
})
