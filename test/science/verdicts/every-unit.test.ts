import { expect, test } from 'vitest'
import { type AcidRow, leastAcid } from '#api/science/verdicts/every-unit.ts'
import { figureIn, storyRows } from '#test/support/story-rows.ts'

const rowsOf = (base: string): AcidRow[] =>
  storyRows('acid-by-base.csv')
    .filter((row) => row.base === base)
    .map((row) => ({
      level: figureIn(row, 'vinegar_ml_per_100g'),
      session: row.run ?? '',
      left: figureIn(row, 'pct_dye_left'),
      lightness: figureIn(row, 'L'),
    }))

// What the invented story was made to show: 30 mL on both wools, with limits of the L* difference to 60 mL of 1.9 and 1.5
test.each([
  ['superwash wool', 1.9],
  ['wool/nylon 80/20', 1.5],
])('on %s 30 mL is the least that is enough, and the limit of the L* difference is shown', (base, upper) => {
  const found = leastAcid(rowsOf(base))
  expect(found).toMatchObject({ verdict: 'holds', least: 30, notReached: false })
  expect(found.steps.find((step) => step.level === 30)?.toNext?.upper).toBeCloseTo(upper, 1)
  expect(found.cautions[0]).toContain('is not shown')
})

test('on silk even 120 mL is not enough, which is said and no number made up', () => {
  const found = leastAcid(rowsOf('silk'))
  expect(found).toMatchObject({ verdict: 'does-not-hold', least: undefined, notReached: true })
  expect(found.cautions).toEqual(['Not reached: even 120 is not enough. Nothing is said about more.'])
})

const jars = (level: number, left: (number | undefined)[], lightness: number): AcidRow[] =>
  left.map((it, session) => ({ level, session, left: it, lightness: lightness + session / 10 }))

test('one session over the limit is enough to break it', () => {
  const found = leastAcid([...jars(15, [3, 12.5, 3], 35), ...jars(30, [3, 3, 3], 35)])
  expect(found.least).toBe(30)
})

test('a level that is still lighter than the next has not taken up all it could', () => {
  expect(leastAcid([...jars(15, [3, 3, 3], 37), ...jars(30, [3, 3, 3], 35)]).least).toBe(30)
})

test('two sessions, or a bath that was not looked at, settle nothing', () => {
  expect(leastAcid([...jars(15, [3, 3], 35), ...jars(30, [3, 3], 35)]).verdict).toBe('not-settled')
  expect(leastAcid(jars(30, [3, undefined, 3], 35)).verdict).toBe('not-settled')
})
