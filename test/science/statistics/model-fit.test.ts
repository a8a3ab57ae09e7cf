import { expect, test } from 'vitest'
import { fitModel } from '#api/science/statistics/model.ts'
import type { ModelRow, ModelSpec, RemlReply } from '#api/science/statistics/model-spec.ts'
import randomPot from '#test/reference/stats/lmm-random-pot.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'
import { oats, oatsWithLosses } from '#test/support/oats.ts'

function reml(spec: ModelSpec, rows: readonly ModelRow[]): RemlReply {
  const reply = fitModel(spec, rows)
  if (reply.method !== 'reml') throw new Error('not by REML')
  return reply
}

function listed<Item>(part: readonly Item[] | { unavailable: string } | undefined): readonly Item[] {
  if (part === undefined || !Array.isArray(part)) throw new Error('no list')
  return part
}

const variances = (reply: RemlReply) => {
  if ('unavailable' in reply.residual) throw new Error('no residual')
  return [...reply.components.map((it) => it.variance), reply.residual.variance]
}

const mean = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0) / values.length
const squares = (values: readonly number[]) => {
  const centre = mean(values)
  return values.reduce((sum, it) => sum + (it - centre) ** 2, 0)
}

// test/reference/stats/lmm-random-pot.json: lme4 1.1.31, lmerTest 3.1.3, polished to the optimum
test('steam given to pots is judged by pots', () => {
  const reply = reml(
    {
      response: 'y',
      factors: ['steam'],
      randomIntercepts: ['pot'],
      sumsOfSquares: 'III',
      contrasts: 'pairwise',
    },
    randomPot.data.rows,
  )
  const known = randomPot.expected
  expect(reply.singular).toBe(false)
  expectClose(reply.remlCriterion, known.minus2RemlLogLik, 1e-9)
  const [pot, residual] = variances(reply)
  expectClose(pot, known.varPot, 1e-6)
  expectClose(residual, known.varResidual, 1e-6)
  listed(reply.fixed).forEach((it, i) => {
    const expected = known.fixedEffects_treatmentContrasts[i]!
    for (const key of ['estimate', 'se'] as const) expectClose(it[key], expected[key], 1e-7)
    for (const key of ['df', 't', 'p'] as const) expectClose(it[key], expected[key], 1e-4)
  })
  const [steam] = listed(reply.table)
  const anova = known.anovaTypeIII_Satterthwaite[0]!
  expect(steam?.df1).toBe(anova.numDF)
  expectClose(steam?.df2, anova.denDF, 1e-4)
  expectClose(steam?.F, anova.F, 1e-4)
  expectClose(steam?.p, anova.p, 1e-4)
  listed(reply.means.steam).forEach((it, i) => {
    const expected = known.emmeans[i]!
    expectClose(it.mean, expected.emmean, 1e-7)
    expectClose(it.se, expected.se, 1e-7)
    expectClose(it.df, expected.df, 1e-4)
    expectClose(it.lower, expected.lower, 1e-5)
  })
  listed(reply.contrasts.steam).forEach((it, i) => {
    const expected = known.pairwise[i]!
    expectClose(it.difference, expected.estimate, 1e-7)
    expectClose(it.se, expected.se, 1e-7)
    expectClose(it.df, expected.df, 1e-4)
    expectClose(it.p, expected.pTukey, 1e-4)
    expectClose(it.single?.p, expected.p, 1e-4)
    expectClose(it.single?.lower, expected.lower, 1e-4)
    expect(it.adjusted).toBe('tukey')
  })
  // What an analysis that takes skeins for pots would say.
  expect(Number(steam?.p)).toBeGreaterThan(1000 * Number(known.wrong_naiveAnovaIgnoringPots[0]!.p))
})

// Davies and Goldsmith (1972), Statistical Methods in Research and Production, section 6.4: yield of dyestuff from six batches.
// Compared with `Dyestuff` of lme4; variances 1764.05 and 2451.25 are printed there, REML 319.654 in Bates (2010), lme4:
// Mixed-effects Modeling with R, section 1.3 (sections and printed values from memory, all confirmed by lme4 1.1.31).
const dyestuff = [
  [1545, 1440, 1440, 1520, 1580],
  [1540, 1555, 1490, 1560, 1495],
  [1595, 1550, 1605, 1510, 1560],
  [1445, 1440, 1595, 1465, 1545],
  [1595, 1630, 1515, 1635, 1625],
  [1520, 1455, 1450, 1480, 1445],
]
const inBatches = (batches: readonly (readonly number[])[]) =>
  batches.flatMap((values, b) => values.map((value) => ({ batch: 'ABCDEF'[b], value })))

test('balanced batches: REML is the analysis of variance', () => {
  const reply = reml({ response: 'value', randomIntercepts: ['batch'] }, inBatches(dyestuff))
  const within = dyestuff.reduce((sum, it) => sum + squares(it), 0) / 24
  const between = (5 * squares(dyestuff.map(mean))) / 5
  const [batch, residual] = variances(reply)
  expectClose(within, 2451.25, 1e-12)
  expectClose(residual, within, 1e-9)
  expectClose(batch, (between - within) / 5, 1e-8)
  expectClose(batch, 1764.05, 1e-8)
  expectClose(reply.remlCriterion, 319.6543, 1e-6)
  const [intercept] = listed(reply.fixed)
  expectClose(intercept?.estimate, 1527.5, 1e-12)
  expectClose(intercept?.se, Math.sqrt(between / 30), 1e-9)
  expectClose(intercept?.df, 5, 1e-9)
})

// Box and Tiao (1973), Bayesian Inference in Statistical Analysis, section 5.1.2: made-up batches whose between-batch mean square is
// below the within-batch one. Compared with `Dyestuff2` of lme4, which finds the same zero.
test('batches that differ less than the yields within them: the variance is zero, the batches stay the units', () => {
  const batches = [
    [7.298, 3.846, 2.434, 9.566, 7.99],
    [5.22, 6.556, 0.608, 11.788, -0.892],
    [0.11, 10.386, 13.434, 5.51, 8.166],
    [2.212, 4.852, 7.092, 9.288, 4.98],
    [0.282, 9.014, 4.458, 9.446, 7.198],
    [1.722, 4.782, 8.106, 0.758, 3.758],
  ]
  const reply = reml({ response: 'value', randomIntercepts: ['batch'] }, inBatches(batches))
  expect(reply.singular).toBe(true)
  const [batch, residual] = variances(reply)
  expect(batch).toBe(0)
  expectClose(residual, squares(batches.flat()) / 29, 1e-12)
  expect(listed(reply.fixed)[0]?.df).toBe(5)
  expect(reply.cautions).toHaveLength(1)
})

// Davies and Goldsmith (1972), section 6.6: zones of six samples of penicillin on each of 24 plates. Compared with `Penicillin` of
// lme4; 0.7169, 3.7309 and 0.3024 by REML, criterion 330.8606 (Bates 2010, section 2.1; from memory, confirmed by
// lme4 1.1.31).
test('crossed random intercepts: REML is the analysis of variance with two ways', () => {
  const zones: Readonly<Record<string, readonly number[]>> = {
    A: [27, 27, 25, 26, 25, 24, 24, 26, 24, 24, 26, 25, 26, 26, 26, 25, 25, 25, 24, 26, 25, 25, 24, 24],
    B: [23, 23, 21, 23, 22, 22, 20, 22, 21, 21, 23, 22, 24, 23, 23, 22, 21, 22, 21, 23, 21, 22, 21, 21],
    C: [26, 26, 25, 25, 26, 25, 23, 26, 24, 24, 26, 26, 26, 26, 25, 25, 24, 24, 23, 26, 24, 25, 24, 24],
    D: [23, 23, 24, 23, 22, 23, 21, 24, 22, 23, 24, 24, 24, 23, 24, 23, 23, 23, 21, 24, 22, 22, 22, 22],
    E: [23, 23, 24, 23, 23, 22, 22, 24, 22, 22, 24, 24, 25, 23, 24, 23, 23, 23, 21, 24, 22, 22, 24, 21],
    F: [21, 21, 20, 20, 20, 19, 19, 21, 20, 19, 21, 20, 22, 20, 22, 20, 20, 19, 19, 21, 18, 20, 19, 18],
  }
  const rows = Object.entries(zones).flatMap(([sample, values]) =>
    values.map((diameter, plate) => ({ sample, plate, diameter })),
  )
  const reply = reml({ response: 'diameter', randomIntercepts: ['plate', 'sample'] }, rows)
  const samples = Object.values(zones)
  const plates = samples[0]!.map((_, plate) => mean(samples.map((it) => it[plate]!)))
  const bySample = 24 * squares(samples.map(mean))
  const byPlate = 6 * squares(plates)
  const residual = (squares(samples.flat()) - bySample - byPlate) / (5 * 23)
  const [plate, sample, left] = variances(reply)
  expectClose(left, residual, 1e-8)
  expectClose(plate, (byPlate / 23 - residual) / 6, 1e-8)
  expectClose(sample, (bySample / 5 - residual) / 24, 1e-8)
  expectClose(plate, 0.716908286, 1e-6)
  expectClose(sample, 3.7309174889, 1e-6)
  expectClose(reply.remlCriterion, 330.860588991, 1e-9)
  expectClose(listed(reply.fixed)[0]?.df, 5.4870933401, 1e-6)
})

// Yates (1935), a split plot; printed F values and df as in Venables and Ripley (2002), Modern Applied Statistics with S, section 10.2;
// variances 214.48, 106.06 and 177.08 as in Pinheiro and Bates (2000), section 1.6; criterion 529.0285 by lme4 1.1.31.
test('a split plot: what is given to plots has the df of plots, what is given within them those of the parts', () => {
  const spec = {
    response: 'yield',
    factors: ['nitrogen', 'variety'],
    interactions: 'all',
    randomIntercepts: ['block', 'block:variety'],
  } as const
  const reply = reml(spec, oats)
  const [block, plot, residual] = variances(reply)
  expectClose(block, 214.4770952, 1e-6)
  expectClose(plot, 106.0618062, 1e-6)
  expectClose(residual, 177.0833323, 1e-6)
  expectClose(reply.remlCriterion, 529.028507007, 1e-9)
  const printed = [
    ['nitrogen', 3, 45, 37.68565],
    ['variety', 2, 10, 1.48534],
    ['nitrogen:variety', 6, 45, 0.30282],
  ] as const
  for (const type of ['II', 'III'] as const) {
    listed(reml({ ...spec, sumsOfSquares: type }, oats).table).forEach((it, i) => {
      const [term, df1, df2, F] = printed[i]!
      expect(it).toMatchObject({ term, df1 })
      expectClose(it.df2, df2, 1e-7)
      expectClose(it.F, F, 2e-5)
    })
  }
})

// The same with losses: lme4 1.1.31, lmerTest 3.1.3 and emmeans 1.8.4 (R 4.2.2) on the same rows
test('a split plot with losses agrees with lme4 and lmerTest', () => {
  const reply = reml(
    {
      response: 'yield',
      factors: ['nitrogen', 'variety'],
      interactions: 'all',
      randomIntercepts: ['block', 'block:variety'],
      meansOf: ['nitrogen'],
      contrasts: 'pairwise',
    },
    oatsWithLosses,
  )
  const [block, plot, residual] = variances(reply)
  expectClose(block, 176.55769003, 1e-5)
  expectClose(plot, 96.89788735, 1e-5)
  expectClose(residual, 168.32184317, 1e-5)
  expectClose(reply.remlCriterion, 465.868929511, 1e-9)
  const known = [
    [3, 38.2902654, 33.20722, 9.5672e-11],
    [2, 8.6602711, 2.77561, 0.1171],
    [6, 38.2965364, 0.67057, 0.67388],
  ] as const
  listed(reply.table).forEach((it, i) => {
    const [df1, df2, F, p] = known[i]!
    expect(it.df1).toBe(df1)
    expectClose(it.df2, df2, 1e-3)
    expectClose(it.F, F, 1e-5)
    expectClose(it.p, p, 1e-4)
  })
  const means = [
    [80.76295, 6.790741, 7.443544423],
    [99.68517, 6.790741, 7.443544422],
    [114.46609, 6.732651, 7.196805698],
    [123.572, 6.787873, 7.431653447],
  ] as const
  // The first amounts met are those that were not lost.
  const levels = ['0.0', '0.2', '0.4', '0.6']
  for (const it of listed(reply.means.nitrogen)) {
    const [value, se, df] = means[levels.indexOf('level' in it ? it.level : '')]!
    expectClose(it.mean, value, 1e-6)
    expectClose(it.se, se, 1e-6)
    expectClose(it.df, df, 1e-3)
  }
  const pair = listed(reply.contrasts.nitrogen).find((it) => it.a === '0.4' && it.b === '0.6')
  expectClose(pair?.difference, 9.10591, 1e-6)
  expectClose(pair?.se, 4.552287, 1e-6)
  expectClose(pair?.df, 38.16768215, 1e-3)
})

test('units and shifts of the response change nothing but the units', () => {
  const spec = { response: 'y', factors: ['steam'], randomIntercepts: ['pot'] }
  const plain = reml(spec, randomPot.data.rows)
  const moved = reml(
    spec,
    randomPot.data.rows.map((row) => ({ ...row, y: 1e4 + 1000 * row.y })),
  )
  expectClose(variances(moved)[0], 1e6 * Number(variances(plain)[0]), 1e-8)
  expectClose(listed(moved.table)[0]?.F, Number(listed(plain.table)[0]?.F), 1e-8)
  expectClose(listed(moved.table)[0]?.df2, Number(listed(plain.table)[0]?.df2), 1e-8)
})

test('the order of the rows changes nothing', () => {
  const spec = { response: 'y', factors: ['steam'], randomIntercepts: ['pot'] }
  const there = reml(spec, randomPot.data.rows)
  const back = reml(spec, [...randomPot.data.rows].reverse())
  expectClose(back.remlCriterion, Number(there.remlCriterion), 1e-11)
  expectClose(listed(back.table)[0]?.F, Number(listed(there.table)[0]?.F), 1e-9)
})
