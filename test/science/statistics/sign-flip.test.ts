import { expect, test } from 'vitest'
import { signFlip } from '#api/science/statistics/sign-flip.ts'
import invented from '#test/reference/stats/gain-least-signflip.json' with { type: 'json' }
import sleep from '#test/reference/stats/gain-published-sleep.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

type Limit = number | string
type Expected = {
  leastGain: number
  alpha: number
  signFlip: {
    signPatterns: number
    pGreater: number
    pLess: number
    oneSidedLower: Limit
    oneSidedUpper: Limit
  }
}

const gains: Readonly<Record<string, readonly number[]>> = invented.data
// R exactRankTests and a script over all patterns; the gains in sleep are Student’s, data set sleep in R.
const cases = [
  ...Object.entries(invented.expected).flatMap(([name, all]) =>
    Object.entries(all).map(([how, it]) => ({
      name: `${name} ${how}`,
      gains: gains[name] ?? [],
      expected: it as Expected,
    })),
  ),
  ...Object.entries(sleep.expected).map(([how, it]) => ({
    name: `sleep ${how}`,
    gains: sleep.data.d,
    expected: it as Expected,
  })),
]

test.each(cases)('$name: p and limits over all patterns as in R', ({ gains, expected }) => {
  const { leastGain: least, alpha, signFlip: known } = expected
  const found = signFlip(gains, { least, confidence: 1 - alpha })
  expect(found?.patterns).toBe(known.signPatterns)
  expect(found?.pGreater).toBe(known.pGreater)
  expect(found?.pLess).toBe(known.pLess)
  for (const [mine, limit] of [
    [found?.lower, known.oneSidedLower],
    [found?.upper, known.oneSidedUpper],
  ] as const)
    if (typeof limit === 'string') expect(String(mine)).toBe(limit)
    else expectClose(mine, limit, 1e-9)
})

test('nothing is said without blocks, or of more than can be counted', () => {
  expect(signFlip([], { confidence: 0.95 })).toBeUndefined()
  expect(
    signFlip(
      Array.from({ length: 17 }, () => 1),
      { confidence: 0.95 },
    ),
  ).toBeUndefined()
  expect(
    signFlip(
      Array.from({ length: 16 }, (_, i) => i + 1),
      { confidence: 0.95 },
    )?.pGreater,
  ).toBe(2 ** -16)
})
