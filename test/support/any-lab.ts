import fc from 'fast-check'
import type { Lab } from '#api/science/colour/lab.ts'

/**
 * Any colour within the bounds of the calculation addresses, to four decimals as instruments give them, greys and
 * the corners of the space among them.
 */
export function anyLab(): fc.Arbitrary<Lab> {
  const axis = fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: -1_280_000, max: 1_270_000 }).map((value) => value / 1e4) },
    { weight: 1, arbitrary: fc.constantFrom(-128, 127, 0, -0, 1e-4, -1e-4) },
  )
  const lightness = fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 0, max: 1_000_000 }).map((value) => value / 1e4) },
    { weight: 1, arbitrary: fc.constantFrom(0, 100, 8, 16, 50) },
  )
  return fc.oneof(
    { weight: 6, arbitrary: fc.record({ L: lightness, a: axis, b: axis }) },
    { weight: 1, arbitrary: lightness.map((L) => ({ L, a: 0, b: 0 })) },
  )
}
