import { expect, test } from 'vitest'
import {
  powerOfDifference,
  powerOfEquivalence,
  powerOfGroups,
  powerOfNoWorse,
  powerOfT,
  smallestN,
} from '#api/science/statistics/power.ts'
import { root } from '#api/science/statistics/root.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import reference from '#test/reference/stats/power-sample-size.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, power.t.test(strict = TRUE), power.anova.test and quadrature: test/reference/stats/power-sample-size.json
const { expected } = reference
const least = (chance: (n: number) => number, power = 0.8) => smallestN(chance, { power, from: 2, most: 1e6 })

test.each(expected.twoSampleT)('$nPerGroup a group for a difference of $delta', (row) => {
  expectClose(studentTQuantile(0.975, row.df), row.tCritical, 1e-9)
  expectClose(powerOfDifference(row.nPerGroup, { effect: row.delta, sd: row.sd }), row.powerTwoSided, 1e-9)
  expectClose(powerOfDifference(row.nPerGroup, { effect: -row.delta, sd: row.sd }), row.powerTwoSided, 1e-9)
})

test.each(expected.nForTwoSampleT)(
  'a difference of $delta with power $power',
  ({ delta, sd, power, nReal, nPerGroup }) => {
    const chance = (n: number) => powerOfDifference(n, { effect: delta, sd })
    expect(least(chance, power)).toBe(nPerGroup)
    expectClose(
      root((n) => chance(n) - power, nPerGroup - 1, nPerGroup),
      nReal,
      1e-6,
    )
  },
)

test.each(expected.nonInferiority)('no worse than a margin of $margin', (row) => {
  const question = { effect: row.margin - row.trueDifference, sd: row.sd }
  expectClose(powerOfNoWorse(row.nPerGroup, question), row.power, 1e-9)
  expect(least((n) => powerOfNoWorse(n, question))).toBe(row.nFor80)
})

test.each(expected.pairedT)('$nPairs pairs', (row) => {
  const question = { effect: row.delta, sd: row.sdOfDifferences, paired: true }
  expectClose(powerOfDifference(row.nPairs, question), row.powerTwoSided, 1e-9)
  expectClose(powerOfNoWorse(row.nPairs, question), row.powerNoWorseWithMarginDelta, 1e-9)
  expect(least((n) => powerOfDifference(n, question))).toBe(row.nPairsFor80TwoSided)
  expect(least((n) => powerOfNoWorse(n, question))).toBe(row.nPairsFor80NoWorse)
})

test.each(expected.tost)('equivalence within $margin', (row) => {
  const question = { effect: row.trueDifference, sd: row.sd, margin: row.margin }
  expectClose(powerOfEquivalence(row.nPerGroup, question), row.power, 1e-8)
  expect(least((n) => powerOfEquivalence(n, question))).toBe(row.nFor80)
})

test.each(expected.anova)('groups with means $means', (row) => {
  expectClose(powerOfGroups(row.nPerGroup, { means: row.means, sd: row.sd }), row.power, 1e-8)
  expect(least((n) => powerOfGroups(n, { means: row.means, sd: row.sd }))).toBe(row.nFor80)
})

test.each(expected.potDesign)('$potsPerTreatment pots a treatment are the replicates', (row) => {
  expectClose(powerOfT({ df: row.df, noncentrality: row.ncp }), row.powerTwoSided, 1e-9)
  const careless = powerOfDifference(row.potsPerTreatment * row.skeinsPerPot, {
    effect: row.delta,
    sd: Math.sqrt(row.varPot + row.varSkein),
  })
  expectClose(careless, row.wrong_powerIfSkeinsTreatedAsIndependent, 1e-8)
})

// Cohen (1988), Statistical Power Analysis, table 2.3.5: d = 0.5 two-sided at 0.05 needs 64 a group for power 0.80, d =
// 0.8 needs 26 (from memory)
test.each([
  [0.5, 64],
  [0.8, 26],
])('a difference of %d standard deviations needs %d a group', (effect, n) => {
  expect(least((units) => powerOfDifference(units, { effect, sd: 1 }))).toBe(n)
})

test('without a true difference the chance is that of a false find', () => {
  expectClose(powerOfDifference(9, { effect: 0, sd: 1 }), 0.05, 1e-9)
  expectClose(powerOfGroups(9, { means: [1, 1, 1], sd: 1 }), 0.05, 1e-9)
  expectClose(powerOfNoWorse(9, { effect: 0, sd: 1, paired: true }), 0.05, 1e-9)
})

test('an effect of a million standard deviations is found, not hung upon', () => {
  for (const n of [2, 5, 1e6]) {
    expectClose(powerOfDifference(n, { effect: 1e6, sd: 1 }), 1, 1e-9)
    expectClose(powerOfGroups(n, { means: [0, 1e6], sd: 1 }), 1, 1e-9)
  }
})

test('what no number reaches is said', () => {
  expect(smallestN(() => 0.5, { power: 0.8, from: 2, most: 1000 })).toBeUndefined()
})
