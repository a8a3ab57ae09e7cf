import { expect, test } from 'vitest'
import { weightedKappa } from '#api/science/statistics/kappa.ts'
import reference from '#test/reference/stats/agreement-kappa-ranks.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

const { halfSteps, published4 } = reference.data
const graded = halfSteps.grader1.map((grade, i): [number, number] => [
  grade,
  halfSteps.grader2[i] ?? Number.NaN,
])
const couples = published4.table.flatMap((row, a) =>
  row.flatMap((count, b) => Array.from({ length: count }, (): [number, number] => [a + 1, b + 1])),
)

// R vcd::Kappa; the table of four answers is published (SexualFun, 91 couples, in R package vcd).
test.each([
  ['half steps', graded, reference.expected.halfSteps],
  ['the published table', couples, reference.expected.published4],
] as const)('%s: kappa, its standard error and limits as in R', (_, pairs, expected) => {
  for (const [weights, known] of [
    ['exact', expected.unweighted],
    ['linear', expected.linear],
    ['quadratic', expected.quadratic],
  ] as const) {
    const found = weightedKappa(pairs, { weights })
    if ('unavailable' in found) throw new Error(found.unavailable)
    expect(found.n).toBe(expected.n)
    expectClose(found.kappa, known.kappa, 1e-10)
    expectClose(found.observed, known.observedAgreement, 1e-10)
    expectClose(found.expected, known.chanceAgreement, 1e-10)
    expectClose(found.se, known.se, 1e-8)
    expectClose(found.lower, known.lower95, 1e-8)
    expectClose(found.upper, known.upper95, 1e-8)
  }
})

test('where both gave one grade to everything, or nothing was graded twice, there is no kappa', () => {
  expect(
    weightedKappa([
      [4, 4],
      [4, 4],
    ]),
  ).toHaveProperty('unavailable')
  expect(weightedKappa([])).toHaveProperty('unavailable')
})
