import { expect, test } from 'vitest'
import { groupBy } from '#api/science/group-by.ts'
import { nestedComponents } from '#api/science/statistics/nested-components.ts'
import reference from '#test/reference/stats/variance-components-nested.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

type Row = Readonly<Record<string, string | number>>

const nested = (rows: readonly Row[], outer: string | undefined, inner: string) =>
  [...groupBy(rows, (row) => (outer === undefined ? '' : row[outer])).values()].map((thing) =>
    [...groupBy(thing, (row) => row[inner]).values()].map((occasion) => occasion.map(({ y }) => Number(y))),
  )

const { data, expected } = reference
// R lme4 and nested analysis of variance: pastes and dyestuff are published (Pastes, Dyestuff), the third is invented.
test.each([
  [
    'pastes, casks within batches',
    nested(data.pastes, 'batch', 'cask'),
    expected.pastes.anova.cask,
    expected.pastes.anova.residual,
  ],
  [
    'dyestuff, batches',
    nested(data.dyestuff, undefined, 'batch'),
    expected.dyestuff.anova.batch,
    expected.dyestuff.anova.residual,
  ],
  [
    'pots within sessions',
    nested(data.invented, 'session', 'pot'),
    expected.invented.anova.pot,
    expected.invented.anova.residual,
  ],
] as const)('%s: mean squares, degrees of freedom and variances as in R', (_, things, inner, residual) => {
  const found = nestedComponents(things)
  if ('unavailable' in found) throw new Error(found.unavailable)
  expect(found.between.df).toBe(inner.df)
  expect(found.within.df).toBe(residual.df)
  expectClose(found.between.meanSquare, inner.ms, 1e-9)
  expectClose(found.within.meanSquare, residual.ms, 1e-9)
  expectClose(found.between.variance, inner.momentVariance, 1e-9)
  expectClose(found.within.variance, residual.momentVariance, 1e-9)
})

test('the variances are those of REML, where all are above 0', () => {
  const { components } = expected.pastes
  const found = nestedComponents(nested(data.pastes, 'batch', 'cask'))
  if ('unavailable' in found) throw new Error(found.unavailable)
  expectClose(found.between.variance, components.cask.variance, 1e-7)
  expectClose(found.within.variance, components.residual.variance, 1e-7)
})

// One thing on two occasions with 3 and 1 repeats: weight (4 − (9 + 1) ÷ 4) ÷ 1 = 1.5.
test('unequal numbers weigh the occasions, and a spread that is less than chance is 0', () => {
  const found = nestedComponents([[[1, 2, 3], [2]]])
  expect(found).toMatchObject({
    size: 1.5,
    within: { meanSquare: 1, df: 2 },
    between: { meanSquare: 0, df: 1, variance: 0 },
  })
})

test('one occasion alone tells nothing of another', () => {
  expect(nestedComponents([[[1, 2, 3]]])).toHaveProperty('unavailable')
  expect(nestedComponents([])).toHaveProperty('unavailable')
})
