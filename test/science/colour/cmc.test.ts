import { differenceCmc } from 'culori'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cmc, cmcAll } from '#api/science/colour/cmc.ts'
import { labTriples } from '#api/science/colour/lab-triples.ts'
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

// Three libraries agree on these to 3e-6 (the file's note); printed to four decimals. Two of the pairs stand on the
// edges of the hue band 164–345.
describe('pairs of the reference file', () => {
  test.each(textilePairs.pairs)(
    '$name: $cmc_2_1 at 2:1, $cmc_1_1 at 1:1, $cmc_2_1_swapped the other way',
    (pair) => {
      const [reference, sample] = [labOf(pair.lab_ref), labOf(pair.lab_sample)]
      const within = textilePairs.tolerance
      expect(Math.abs(cmc(reference, sample) - pair.cmc_2_1)).toBeLessThanOrEqual(within)
      expect(Math.abs(cmc(reference, sample, { l: 1, c: 1 }) - pair.cmc_1_1)).toBeLessThanOrEqual(within)
      expect(Math.abs(cmc(sample, reference) - pair.cmc_2_1_swapped)).toBeLessThanOrEqual(within)
    },
  )
})

test('any two colours are as culori has them, with its weights set to 2:1', () => {
  const oracle = differenceCmc(2, 1)
  fc.assert(
    fc.property(anyLab(), anyLab(), (one, two) => {
      const other = oracle(
        { mode: 'lab65', l: one.L, a: one.a, b: one.b },
        { mode: 'lab65', l: two.L, a: two.a, b: two.b },
      )
      // At L* 0 and exactly on a hue edge the oracle may fall on the other side; lost roots are NaN there.
      if (!Number.isNaN(other)) expect(Math.abs(cmc(one, two) - other)).toBeLessThan(1e-4)
      expect(cmc(one, one)).toBe(0)
    }),
    { numRuns: 1000 },
  )
})

test('in bulk each pair is what it is alone', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(anyLab(), anyLab()), { maxLength: 20 }), (pairs) => {
      const all = cmcAll(labTriples(pairs.map(([one]) => one)), labTriples(pairs.map(([, two]) => two)))
      expect([...all]).toEqual(pairs.map(([one, two]) => cmc(one, two)))
    }),
  )
})

test('weights of 0 or less are refused', () => {
  const grey = { L: 50, a: 0, b: 0 }
  expect(() => cmc(grey, grey, { l: 0 })).toThrow(RangeError)
  expect(() => cmc(grey, grey, { c: -1 })).toThrow(RangeError)
  expect(() => cmcAll(new Float64Array(3), new Float64Array(3), { l: Number.NaN })).toThrow(RangeError)
})
