import { expect, test } from 'vitest'
import { modelDiagnostics } from '#api/science/statistics/linear-model-diagnostics.ts'
import randomPot from '#test/reference/stats/lmm-random-pot.json' with { type: 'json' }
import threeWay from '#test/reference/stats/threeway-unbalanced.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'
import { oats } from '#test/support/oats.ts'

const { rows } = threeWay.data
const spec = { response: 'deltaE', factors: ['steam', 'acid', 'depth'], interactions: [['steam', 'depth']] }
const found = modelDiagnostics(spec, rows)

// R 4.2.2 on the same rows: n · R² of the squared residuals on the fit; cooks.distance; hatvalues
test('spread against fit and the row of largest influence are those of R', () => {
  if ('unavailable' in found.spread || 'unavailable' in found.influence) throw new Error('no answer')
  expectClose(found.spread.statistic, 0.0343428595881, 1e-9)
  expectClose(found.spread.p, 0.8529794122334, 1e-9)
  expect(found.influence.row).toBe(21)
  expectClose(found.influence.cook, 0.147323804367, 1e-9)
  expectClose(found.influence.leverage, 0.203910614525, 1e-9)
})

test('fit and residual of a row add up to its response', () => {
  rows.forEach(({ deltaE }, row) => {
    expectClose(found.fitted[row]! + found.residuals[row]!, deltaE, 1e-14)
  })
  expectClose(
    found.residuals.reduce((sum, it) => sum + it * it, 0),
    threeWay.expected.residualSS,
    1e-9,
  )
})

// The same residuals as the reference's, by their Shapiro–Wilk statistic
test('normality of the residuals is that of R', () => {
  if ('unavailable' in found.normality) throw new Error('no answer')
  expectClose(found.normality.W, threeWay.expected.shapiroWilkResiduals.W, 1e-9)
  expectClose(found.normality.p, threeWay.expected.shapiroWilkResiduals.p, 1e-7)
})

test('a model that meets every row leaves nothing to look at', () => {
  const still = rows.map((row) => ({ ...row, deltaE: 4 }))
  const { spread, influence, normality } = modelDiagnostics(spec, still)
  for (const part of [spread, influence, normality]) expect(part).toHaveProperty('unavailable')
})

test('one mean for all rows: spread cannot go with a fit that never changes', () => {
  expect(modelDiagnostics({ response: 'deltaE' }, rows).spread).toHaveProperty('unavailable')
})

// lme4 1.1.31 (R 4.2.2) on the same rows: residuals(lmer(y ~ steam + (1 | pot))), with shapiro.test of them
test('with random intercepts the residuals are those beside the groups', () => {
  const mixed = modelDiagnostics(
    { response: 'y', factors: ['steam'], randomIntercepts: ['pot'] },
    randomPot.data.rows,
  )
  for (const [row, residual] of [
    [0, -0.43889034332],
    [13, 0.04800876676],
    [33, -0.32431725886],
  ] as const)
    expectClose(mixed.residuals[row], residual, 1e-7)
  if ('unavailable' in mixed.normality) throw new Error('no answer')
  expectClose(mixed.normality.W, 0.975512933, 1e-7)
  expectClose(mixed.normality.p, 0.627931086, 1e-6)
  expect(mixed.influence).toHaveProperty('unavailable')
})

// lme4 1.1.31 (R 4.2.2): residuals(lmer(Y ~ N * V + (1 | B) + (1 | B:V))) of MASS::oats
test('with nested random intercepts too', () => {
  const { residuals } = modelDiagnostics(
    {
      response: 'yield',
      factors: ['nitrogen', 'variety'],
      interactions: 'all',
      randomIntercepts: ['block', 'block:variety'],
    },
    oats,
  )
  const of = (block: string, variety: string, nitrogen: string) =>
    residuals[
      oats.findIndex((it) => it.block === block && it.variety === variety && it.nitrogen === nitrogen)
    ]
  expectClose(of('II', 'Golden rain', '0.6'), 17.21097108815, 1e-6)
  expectClose(of('VI', 'Marvellous', '0.6'), -3.43141002739, 1e-6)
})
