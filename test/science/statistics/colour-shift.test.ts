import { expect, test } from 'vitest'
import { colourShift } from '#api/science/statistics/colour-shift.ts'
import reference from '#test/reference/stats/hotelling-lab.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Found = any
const before = reference.data.groupA.map((_, i) => ({ L: 40 + i, a: 10 - i, b: 5 }))
const after = reference.data.groupA.map(({ dL, da, db }, i) => ({
  L: 40 + i + dL,
  a: 10 - i + da,
  b: 5 + db,
}))

// test/reference/stats/hotelling-lab.json: the same differences, laid on any colours
test('signed differences, their limits and T² of pairs', () => {
  const known = reference.expected.oneSampleA
  const found: Found = colourShift(before, after)
  expectClose(found.hotelling.T2, known.T2, 1e-9)
  expectClose(found.hotelling.p, known.pValue, 1e-9)
  for (const name of ['dL', 'da', 'db'] as const) {
    const of = known.intervals[name]
    expectClose(found.mean[name], known.mean[name], 1e-9)
    expectClose(found.intervals[name][0], of.tLower95, 1e-9)
    expectClose(found.intervals[name][1], of.tUpper95, 1e-9)
    expectClose(found.simultaneous[name][0], of.simultaneousLower95, 1e-9)
    expectClose(found.simultaneous[name][1], of.simultaneousUpper95, 1e-9)
  }
  // Lengths only add up; the length of the mean shift is the shorter.
  expect(found.dE00OfMeans).toBeLessThan(found.meanOfDE00)
})

// Sharma, Wu & Dalal (2005), table 1, pair 1: ΔE00 = 2.0425
test('one pair has a shift and a ΔE and nothing to judge by', () => {
  const found: Found = colourShift([{ L: 50, a: 2.6772, b: -79.7751 }], [{ L: 50, a: 0, b: -82.7485 }])
  expect(found.dE00OfMeans).toBeCloseTo(2.0425, 4)
  expect(found.meanOfDE00).toBeCloseTo(2.0425, 4)
  expect(found.mcdm).toEqual({ before: 0, after: 0 })
  expect(found.hotelling).toHaveProperty('unavailable')
  expect(found.intervals.dL).toHaveProperty('unavailable')
  expect(found.simultaneous.dL).toHaveProperty('unavailable')
})

test('three pairs have single intervals but no T²', () => {
  const found: Found = colourShift(before.slice(0, 3), after.slice(0, 3))
  expect(found.intervals.dL).toHaveLength(2)
  expect(found.hotelling.unavailable).toContain('Fewer than 4')
})

test('shifts that are equal but for rounding have no spread', () => {
  const same = before.map(({ L, a, b }) => ({ L: L + 0.1, a: a + 0.3, b: b + 0.2 }))
  const found: Found = colourShift(before, same)
  expect(found.intervals.da.unavailable).toContain('equal')
  expect(found.hotelling.unavailable).toContain('equal')
})
