import { expect, test } from 'vitest'
import { quantileByDf } from '#api/science/statistics/contrasts-quantiles.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import { studentizedRangeQuantile } from '#api/science/statistics/studentized-range.ts'
import { expectClose } from '#test/support/close-to.ts'

const spread = Array.from({ length: 60 }, (_, i) => 3.2 + i ** 1.7 / 4)

test('few different degrees of freedom are worked out each', () => {
  let calls = 0
  const quantile = quantileByDf(
    (df) => {
      calls++
      return df
    },
    [4, 4, 5],
  )
  expect([quantile(4), quantile(4), quantile(5)]).toEqual([4, 4, 5])
  expect(calls).toBe(2)
})

test('many are interpolated, for t as for the studentised range, and agree with the slow way', () => {
  const t = quantileByDf((df) => studentTQuantile(0.975, df), spread)
  const range = quantileByDf((df) => studentizedRangeQuantile(0.95, { groups: 7, df }), spread)
  for (const df of spread.filter((_, i) => i % 6 === 0)) {
    expectClose(t(df), studentTQuantile(0.975, df), 1e-7)
    expectClose(range(df), studentizedRangeQuantile(0.95, { groups: 7, df }), 1e-7)
  }
})
