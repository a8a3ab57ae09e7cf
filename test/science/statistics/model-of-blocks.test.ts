import { expect, test } from 'vitest'
import { type BlockRow, modelOfBlocks } from '#api/science/statistics/model-of-blocks.ts'
import randomisedBlock from '#test/reference/stats/randomized-block-steam.json' with { type: 'json' }
import tost from '#test/reference/stats/tost-noninferiority-med.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'
import { oats, oatsWithLosses } from '#test/support/oats.ts'

function answered(rows: readonly BlockRow[], reference: string) {
  const model = modelOfBlocks(rows, { reference })
  if ('unavailable' in model) throw new Error(model.unavailable)
  return model
}

// Complete blocks: differences, standard errors and df are those of the additive analysis of variance.
// Source: test/reference/stats/randomized-block-steam.json (R 4.2.2, emmeans 1.8.4)
test('in complete blocks the random block gives what the analysis of variance with blocks gives', () => {
  const rows = randomisedBlock.data.rows.map((it) => ({ level: it.steam, block: it.day, value: it.deltaE }))
  const { differences, singular } = answered(rows, '10')
  expect(singular).toBe(false)
  for (const known of randomisedBlock.expected.pairwise.steam.filter((it) =>
    it.contrast.endsWith('steam10'),
  )) {
    const level = known.contrast.slice(5, 7)
    const got = differences.get(level)
    expectClose(got?.extra, known.estimate, 1e-9)
    expectClose(got?.se, known.se, 1e-9)
    expectClose(got?.df, known.df, 1e-9)
  }
})

// test/reference/stats/tost-noninferiority-med.json, minimumDoseBlocked, blockModel
test('every level is set against the reference of a ladder', () => {
  const rows = tost.data.minimumDoseBlocked.rows.map((it) => ({
    level: String(it.dose),
    block: it.block,
    value: it.y,
  }))
  const { differences } = answered(rows, '30')
  expect([...differences.keys()]).toEqual(['5', '10', '15'])
  for (const step of tost.expected.minimumDoseBlocked.steps) {
    const got = differences.get(String(step.dose))
    expectClose(got?.extra, step.difference, 1e-9)
    expectClose(got?.se, step.blockModel.se, 1e-9)
    expectClose(got?.df, step.blockModel.df, 1e-9)
  }
})

// Yates (1935): varieties stand on whole plots. Mean square of plots 601.33 with 10 df in the printed analysis of variance
// (Venables and Ripley 2002, Modern Applied Statistics with S, section 10.2), so the standard error is √(2 · 601.33 / 24).
test('a level given to whole vessels is judged by vessels, not by the rows in them', () => {
  const rows = oats.map((it) => ({ level: it.variety, block: it.block, vessel: it.variety, value: it.yield }))
  const got = answered(rows, 'Golden rain').differences.get('Marvellous')
  expectClose(got?.extra, 109.79166666666667 - 104.5, 1e-9)
  expectClose(got?.se, Math.sqrt((2 * 601.33) / 24), 1e-5)
  expectClose(got?.df, 10, 1e-9)
})

// lme4 1.1.31, lmerTest 3.1.3, emmeans 1.8.4 (R 4.2.2) on the same rows: lmer(yield ~ nitrogen + (1|block) + (1|block:variety))
test('incomplete blocks with vessels that repeat agree with lme4 and lmerTest', () => {
  const rows = oatsWithLosses.map((it) => ({
    level: it.nitrogen,
    block: it.block,
    vessel: it.variety,
    value: it.yield,
  }))
  const { differences, components, residual } = answered(rows, '0.0')
  expectClose(components.find((it) => it.group === 'block')?.variance, 179.1241216, 1e-5)
  expectClose(components.find((it) => it.group === 'vessel')?.variance, 140.5728809, 1e-5)
  expectClose(residual, 160.6580604, 1e-5)
  for (const [level, extra, se, df] of [
    ['0.2', 18.875, 4.481323, 44.71011183],
    ['0.4', 34.14162, 4.43846, 45.05969523],
    ['0.6', 43.30425, 4.525766, 45.27472361],
  ] as const) {
    expectClose(differences.get(level)?.extra, extra, 5e-6)
    expectClose(differences.get(level)?.se, se, 1e-6)
    expectClose(differences.get(level)?.df, df, 1e-3)
  }
})

test('where no vessel-to-vessel variation shows, skeins do not become replicates', () => {
  // Two vessels a session, one level each, three skeins in each; vessel means differ by less than the skeins do.
  const skeins = [-0.5, 0, 0.5]
  const rows = ['1', '2', '3', '4'].flatMap((block, b) =>
    ['10', '30'].flatMap((level, l) =>
      skeins.map((off) => ({ level, block, vessel: level, value: b + l + off })),
    ),
  )
  const { differences, singular, cautions } = answered(rows, '30')
  expect(singular).toBe(true)
  expect(cautions).toHaveLength(1)
  // 8 vessels, less the rank of 4 sessions and 2 levels together: 8 − 5.
  expect(differences.get('10')?.df).toBe(3)
})

test('vessels with one row each are the residual', () => {
  const rows = randomisedBlock.data.rows.map((it) => ({ level: it.steam, block: it.day, value: it.deltaE }))
  const named = rows.map((it) => ({ ...it, vessel: it.level }))
  expect(answered(named, '10')).toEqual(answered(rows, '10'))
})

test('what cannot be judged is said in a sentence', () => {
  const row = (block: string, level: string, value: number) => ({ block, level, value })
  const say = (rows: readonly BlockRow[]) => {
    const model = modelOfBlocks(rows, { reference: '30' })
    return 'unavailable' in model ? model.unavailable : ''
  }
  expect(say([])).toBe('No row has the reference.')
  expect(say([row('1', '30', 1), row('2', '30', 2)])).toBe('There is no level beside the reference.')
  expect(say([row('1', '30', 1), row('1', '10', 2), row('1', '10', 3)])).toMatch(/one session/)
  expect(say([row('1', '30', 1), row('2', '10', 2)])).toMatch(/one row only/)
  expect(say(['1', '2'].flatMap((it) => [row(it, '30', 1), row(it, '10', 1)]))).toMatch(/are the same/)
  expect(say(['1', '2'].flatMap((it) => [row(it, '30', 1), row(it, '10', 2)]))).toMatch(/are the same/)
  expect(say(['1', '2'].flatMap((it, i) => [row(it, '30', i), row(it, '10', i + 2)]))).toMatch(
    /hardly differ/,
  )
  expect(say([row('1', '30', 1), row('1', '30', 2), row('2', '10', 4), row('2', '10', 2)])).toMatch(
    /told apart/,
  )
  expect(() => say([row('1', '30', Number.NaN)])).toThrow(RangeError)
})
