import { expect, test } from 'vitest'
import { powerOfRuns, runsNeeded } from '#api/science/design/runs-needed.ts'
import reference from '#test/reference/stats/power-sample-size.json' with { type: 'json' }

// domain, section 5: runs for 80 % by margin ÷ SD of the paired difference
test.each([
  [1, 8, 10],
  [1.5, 5, 6],
  [2, 4, 5],
  [3, 3, 4],
])('margin %d times the SD takes %i runs for no worse than, and %i to detect', (ratio, noWorse, detect) => {
  expect(runsNeeded({ distance: ratio, sd: 1, goal: 'no-worse' })).toBe(noWorse)
  expect(runsNeeded({ distance: ratio, sd: 1, goal: 'difference' })).toBe(detect)
})

// reference/stats: R 4.2.2 and quadrature over chi
test.each(reference.expected.pairedT)('$nPairs pairs reach the power that another program finds', (it) => {
  const question = { distance: it.delta, sd: it.sdOfDifferences }
  expect(powerOfRuns(it.nPairs, { ...question, goal: 'no-worse' })).toBeCloseTo(
    it.powerNoWorseWithMarginDelta,
    8,
  )
  expect(powerOfRuns(it.nPairs, { ...question, goal: 'difference' })).toBeCloseTo(it.powerTwoSided, 8)
  expect(runsNeeded({ ...question, goal: 'no-worse' })).toBe(it.nPairsFor80NoWorse)
  expect(runsNeeded({ ...question, goal: 'difference' })).toBe(it.nPairsFor80TwoSided)
})

test.each(reference.expected.nonInferiority)(
  'two arms of $nPerGroup units reach the power that another program finds',
  (it) => {
    const question = {
      distance: it.margin - it.trueDifference,
      sd: it.sd,
      goal: 'no-worse' as const,
      arms: 2 as const,
    }
    expect(powerOfRuns(it.nPerGroup, question)).toBeCloseTo(it.power, 8)
    expect(runsNeeded(question)).toBe(it.nFor80)
  },
)

test('more than fifty runs are no answer', () => {
  expect(runsNeeded({ distance: 0.1, sd: 1, goal: 'no-worse' })).toBeUndefined()
})

test('no number of runs shows a difference of nothing', () => {
  expect(() => runsNeeded({ distance: 0, sd: 1, goal: 'no-worse' })).toThrow(RangeError)
})
