import { expect, test } from 'vitest'
import { cie76All } from '#api/science/colour/cie76.ts'
import { labTriples } from '#api/science/colour/lab-triples.ts'
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { labOf } from '#test/support/lab-of.ts'

test('the pairs of the reference file in one go', () => {
  const { pairs, tolerance } = textilePairs
  const all = cie76All(
    labTriples(pairs.map(({ lab_ref }) => labOf(lab_ref))),
    labTriples(pairs.map(({ lab_sample }) => labOf(lab_sample))),
  )
  expect(all).toHaveLength(pairs.length)
  for (const [i, { de76 }] of pairs.entries()) expect(Math.abs(all[i]! - de76)).toBeLessThanOrEqual(tolerance)
})

test('rows of unequal length are refused', () => {
  expect(() => cie76All(new Float64Array(3), new Float64Array(6))).toThrow(RangeError)
})
