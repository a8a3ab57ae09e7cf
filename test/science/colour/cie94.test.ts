import { differenceCie94 } from 'culori'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cie94, cie94All } from '#api/science/colour/cie94.ts'
import { labTriples } from '#api/science/colour/lab-triples.ts'
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

// Four libraries agree on these to 3e-6 (the file's note); printed to four decimals.
describe('pairs of the reference file', () => {
  test.each(textilePairs.pairs)(
    '$name: $de94_textiles for textiles, $de94_graphic for graphic arts',
    (pair) => {
      const [reference, sample] = [labOf(pair.lab_ref), labOf(pair.lab_sample)]
      const within = textilePairs.tolerance
      expect(Math.abs(cie94(reference, sample) - pair.de94_textiles)).toBeLessThanOrEqual(within)
      expect(Math.abs(cie94(reference, sample, { use: 'graphic' }) - pair.de94_graphic)).toBeLessThanOrEqual(
        within,
      )
    },
  )
})

test('the weights are those of the colour before: swapped, another difference', () => {
  const [grey, red] = [
    { L: 50, a: 0, b: 0 },
    { L: 50, a: 40, b: 0 },
  ]
  // By hand: S_C is 1 for the grey and 1 + 0.048·40 = 2.92 for the red.
  expect(cie94(grey, red)).toBeCloseTo(40, 12)
  expect(cie94(red, grey)).toBeCloseTo(40 / 2.92, 12)
})

test('any two colours are as culori has them, with its constants set to textiles', () => {
  const oracle = { textiles: differenceCie94(2, 0.048, 0.014), graphic: differenceCie94() }
  fc.assert(
    fc.property(
      anyLab(),
      anyLab(),
      fc.constantFrom('textiles' as const, 'graphic' as const),
      (one, two, use) => {
        const other = oracle[use](
          { mode: 'lab65', l: one.L, a: one.a, b: one.b },
          { mode: 'lab65', l: two.L, a: two.a, b: two.b },
        )
        // The oracle takes ΔH² from a difference of large squares and loses digits on it, or has no root at all.
        if (!Number.isNaN(other)) expect(Math.abs(cie94(one, two, { use }) - other)).toBeLessThan(2e-5)
        expect(cie94(one, one, { use })).toBe(0)
      },
    ),
    { numRuns: 1000 },
  )
})

test('in bulk each pair is what it is alone', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(anyLab(), anyLab()), { maxLength: 20 }), (pairs) => {
      const all = cie94All(labTriples(pairs.map(([one]) => one)), labTriples(pairs.map(([, two]) => two)))
      expect([...all]).toEqual(pairs.map(([one, two]) => cie94(one, two)))
    }),
  )
})

test('rows of unequal length are refused', () => {
  expect(() => cie94All(new Float64Array(3), new Float64Array(6))).toThrow(RangeError)
  expect(() => cie94All(new Float64Array(4), new Float64Array(4))).toThrow(RangeError)
})
