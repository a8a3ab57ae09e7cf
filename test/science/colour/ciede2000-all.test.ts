import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { ciede2000All } from '#api/science/colour/ciede2000-all.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { labTriples } from '#api/science/colour/lab-triples.ts'
import sharma2005 from '#test/reference/colour/ciede2000-sharma.json' with { type: 'json' }
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

const all = (pairs: readonly (readonly [Lab, Lab])[]) => [
  ...ciede2000All(labTriples(pairs.map(([one]) => one)), labTriples(pairs.map(([, two]) => two))),
]

// Sharma, Wu and Dalal (2005), table 1: printed to four decimals.
test('the 34 published pairs, both ways round', () => {
  const pairs = sharma2005.pairs.map(({ lab1, lab2 }) => [labOf(lab1), labOf(lab2)] as const)
  const [there, back] = [all(pairs), all(pairs.map(([one, two]) => [two, one]))]
  sharma2005.pairs.forEach(({ de00 }, i) => {
    expect(Math.abs(there[i]! - de00)).toBeLessThanOrEqual(5e-5)
    expect(Math.abs(back[i]! - de00)).toBeLessThanOrEqual(5e-5)
  })
})

// The 34 pairs have no straight opposites with chroma and no perfect grey; these do.
test('the textile pairs of the reference file', () => {
  const found = all(textilePairs.pairs.map(({ lab_ref, lab_sample }) => [labOf(lab_ref), labOf(lab_sample)]))
  for (const [i, { de00 }] of textilePairs.pairs.entries())
    expect(Math.abs(found[i]! - de00)).toBeLessThanOrEqual(1e-4)
})

const polar = (L: number, chroma: number, degrees: number): Lab => ({
  L,
  a: chroma * Math.cos((degrees * Math.PI) / 180),
  b: chroma * Math.sin((degrees * Math.PI) / 180),
})

const expectAsAlone = (pairs: readonly (readonly [Lab, Lab])[]) => {
  const found = all(pairs)
  pairs.forEach(([one, two], i) => {
    const alone = ciede2000(one, two)
    expect(Math.abs(found[i]! - alone)).toBeLessThanOrEqual(1e-9 * (1 + alone))
  })
}

test('in bulk each pair is what it is alone, to 1e-9', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(anyLab(), anyLab()), { minLength: 1, maxLength: 50 }), expectAsAlone),
    {
      numRuns: 500,
    },
  )
})

test('the same for near pairs all round the circle, in the blues and across hue 0 too', () => {
  const pairs: [Lab, Lab][] = []
  for (let degrees = 0; degrees < 360; degrees += 0.25)
    for (const chroma of [0.01, 1, 12, 40, 110])
      pairs.push([polar(40, chroma, degrees), polar(42, chroma * 1.05, degrees + 1.3)])
  expectAsAlone(pairs)
})

test('the same for hues at, and within a tenth of a degree of, straight opposite', () => {
  const pairs: [Lab, Lab][] = []
  for (let degrees = 3; degrees < 363; degrees += 7)
    for (const off of [-0.2, -0.1, -0.05, -1e-3, 1e-3, 0.05, 0.1, 0.2])
      pairs.push([polar(50, 30, degrees), polar(50, 20, degrees + 180 + off)])
  expectAsAlone(pairs)
})

test('the same for greys, near greys and equal colours', () => {
  const greys = [0, 1e-12, 1e-9, 1e-6, 1e-3].flatMap((chroma) => [
    polar(30, chroma, 10),
    polar(70, chroma, 290),
  ])
  expectAsAlone(greys.flatMap((one) => greys.map((two) => [one, two] as const)))
})

test('rows of unequal length are refused, no pairs give none', () => {
  expect(() => ciede2000All(new Float64Array(3), new Float64Array(6))).toThrow(RangeError)
  expect(ciede2000All(new Float64Array(0), new Float64Array(0))).toHaveLength(0)
})
