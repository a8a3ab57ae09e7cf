import { expect, test } from 'vitest'
import { predictionLimits } from '#api/science/statistics/prediction-limit.ts'
import reference from '#test/reference/stats/prediction-next-batch.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R: mean ± qt(0.95, n − 1)·sd·√(1 + 1/n); for batches of one size the exact limit of the next batch’s mean. The batches of dyestuff are
// published (lme4, Dyestuff).
test.each([
  [
    'nine single values',
    reference.data.simpleSample,
    reference.expected.simpleSample.nextOne,
    'oneSidedUpper',
    'oneSidedLower',
  ],
] as const)('%s: one-sided limits of the next as in R', (_, values, known, upper, lower) => {
  const found = predictionLimits(values, { confidence: 0.95 })
  if ('unavailable' in found) throw new Error(found.unavailable)
  expect(found.n).toBe(known.n)
  expectClose(found.mean, known.mean, 1e-12)
  expectClose(found.sd, known.sd, 1e-12)
  expectClose(found.upper, known[upper], 1e-9)
  expectClose(found.lower, known[lower], 1e-9)
})

test.each([
  ['invented batches', reference.expected.balanced],
  ['dyestuff', reference.expected.dyestuff],
] as const)('%s: the next batch of the same size by the means of those before', (_, known) => {
  const found = predictionLimits(known.batchMeans, { confidence: 0.95 })
  const two = predictionLimits(known.batchMeans, { confidence: 0.975 })
  expect(found).toMatchObject({ n: known.batches })
  if ('unavailable' in found || 'unavailable' in two) throw new Error('six batches have limits')
  expectClose(found.upper, known.nextBatchMeanSameSize.oneSidedUpper95, 1e-9)
  expectClose(found.lower, known.nextBatchMeanSameSize.oneSidedLower95, 1e-9)
  expectClose(two.upper, known.nextBatchMeanSameSize.upper, 1e-9)
  expectClose(two.lower, known.nextBatchMeanSameSize.lower, 1e-9)
})

test('one value says nothing of the next', () => {
  expect(predictionLimits([2], { confidence: 0.95 })).toHaveProperty('unavailable')
})
