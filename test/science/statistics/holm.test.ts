import { expect, test } from 'vitest'
import { holm } from '#api/science/statistics/holm.ts'
import balanced from '#test/reference/stats/oneway-balanced-steam.json' with { type: 'json' }
import unbalanced from '#test/reference/stats/oneway-unbalanced-acid.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, p.adjust(p, 'holm'): test/reference/stats/oneway-*.json
test.each([balanced, unbalanced])('$id', ({ expected }) => {
  const { pairs } = expected.pairwisePooledT
  for (const [i, adjusted] of holm(pairs.map(({ p }) => p)).entries())
    expectClose(adjusted, pairs[i]!.pHolm, 1e-12)
})

test('no p-value passes 1, and none of a family falls below one that was smaller', () => {
  expect(holm([0.6, 0.7])).toEqual([1, 1])
  expect(holm([0.02, 0.02, 0.001])).toEqual([0.04, 0.04, 0.003])
  expect(holm([])).toEqual([])
})
