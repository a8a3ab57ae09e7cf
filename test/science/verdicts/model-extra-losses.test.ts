import { expect, test } from 'vitest'
import { leastLevelThatHolds } from '#api/science/verdicts/least-level-that-holds.ts'
import reference from '#test/reference/stats/tost-noninferiority-med.json' with { type: 'json' }
import { steamLadder } from '#test/support/steam-ladder.ts'

const stepAt = (verdict: ReturnType<typeof leastLevelThatHolds>, level: number) => {
  const step = verdict.steps.find((it) => it.level === level)
  if (step === undefined) throw new Error(`No step at ${level}`)
  return step
}

test('the model of the worked ladder finds no session variance and has 15 degrees of freedom', () => {
  // domain, section 7: singular, 15 df. Without session variance the levels' variances are simply averaged; t(15) at 0.95 is
  // 1.753 in any printed table.
  const rows = steamLadder().map((row) => ({ ...row, block: row.session }))
  const step = stepAt(leastLevelThatHolds(rows, { margin: 1, method: 'model' }), 35)
  expect(step.df).toBeCloseTo(15, 6)
  expect(step.extra).toBeCloseTo(0.02, 2)
  const variances = [0, 10, 20, 35, 50, 75].map((level) => {
    const values = rows.filter((row) => row.level === level).map((row) => row.value ?? Number.NaN)
    const mean = values.reduce((sum, it) => sum + it, 0) / 4
    return values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / 3
  })
  const variance = variances.reduce((sum, it) => sum + it, 0) / 6
  expect(step.upper).toBeCloseTo((step.extra ?? 0) + 1.753 * Math.sqrt((2 * variance) / 4), 3)
})

// Additive block model: reference/stats, computed by R 4.2.2
test.each(reference.expected.minimumDoseBlocked.steps)(
  'by the model of days, dose $dose has the limits of another program',
  (step) => {
    const rows = reference.data.minimumDoseBlocked.rows.map(({ dose, block, y }) => ({
      level: dose,
      block,
      value: y,
    }))
    const model = stepAt(leastLevelThatHolds(rows, { margin: 1, method: 'model' }), step.dose)
    expect(model.extra).toBeCloseTo(step.difference, 6)
    expect(model.se).toBeCloseTo(step.blockModel.se, 5)
    expect(model.df).toBeCloseTo(step.blockModel.df, 2)
    expect(model.upper).toBeCloseTo(step.blockModel.upper95OneSided, 4)
  },
)

test('an incomplete session is used by the model and left out by pairs', () => {
  const at = (level: number, ...values: number[]) => values.map((value, i) => ({ level, block: i, value }))
  const rows = [...at(30, 1, 1.2, 0.9), ...at(60, 1.2, 0.9, 1.2, 0.8, 1.3)]
  // Sessions do not pull alike here, so the model has no session variance and compares the plain means of all rows.
  expect(stepAt(leastLevelThatHolds(rows, { margin: 1 }), 30).extra).toBeCloseTo(3.1 / 3 - 3.3 / 3, 9)
  const model = stepAt(leastLevelThatHolds(rows, { margin: 1, method: 'model' }), 30)
  expect(model.extra).toBeCloseTo(3.1 / 3 - 5.4 / 5, 9)
})

test('the model of values without any spread has no limits, and nothing holds', () => {
  const rows = [30, 60].flatMap((level) => [1, 2, 3].map((block) => ({ level, block, value: level / 60 })))
  const verdict = leastLevelThatHolds(rows, { margin: 1, method: 'model' })
  expect(verdict.verdict).toBe('not-settled')
  expect(stepAt(verdict, 30).upper).toBeUndefined()
})
