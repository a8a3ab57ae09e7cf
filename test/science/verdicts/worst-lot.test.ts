import { expect, test } from 'vitest'
import { failingUpTo, worstLot } from '#api/science/verdicts/worst-lot.ts'
import { numberIn, storyRows } from '#test/support/story-rows.ts'

const rows = storyRows('colourway-wash-claims.csv')
const tests = ['stain_wool', 'stain_nylon', 'stain_cotton', 'wet_contact_wool', 'crock_dry', 'crock_wet']
const lotsOf = (colourway: string, columns = tests) =>
  rows
    .filter((row) => row.colourway === colourway)
    .map((row) => ({
      lot: row.lot ?? '',
      grades: Object.fromEntries(columns.map((column) => [column, numberIn(row, column)])),
    }))

// What the invented story was made to show: oat, lichen and brick hold, plum and slate lie in between, deep turquoise does not
test.each([
  ['oat', 'holds', 4.5],
  ['lichen', 'holds', 4],
  ['brick', 'holds', 4],
  ['plum', 'not-settled', 3.5],
  ['slate', 'not-settled', 3.5],
  ['deep turquoise', 'does-not-hold', 2.5],
])('%s is judged by its worst lot: %s', (colourway, verdict, grade) => {
  const found = worstLot(lotsOf(colourway))
  expect(found).toMatchObject({ verdict, lots: 3, worst: { grade }, inBetween: verdict === 'not-settled' })
})

test('cotton alone would have let all six colourways hold', () => {
  const colourways = [...new Set(rows.map((row) => row.colourway ?? ''))]
  expect(colourways).toHaveLength(6)
  for (const colourway of colourways)
    expect(worstLot(lotsOf(colourway, ['stain_cotton'])).verdict).toBe('holds')
})

// domain, section 4: 1 − 0.05^(1/n)
test.each([
  [3, 63],
  [5, 45],
  [10, 26],
  [20, 14],
  [59, 5],
])('%i lots without a failure leave up to %i %% failing', (lots, share) => {
  expect(Math.round(failingUpTo(lots) * 100)).toBe(share)
})

test('two good lots are too few, and one bad lot is enough', () => {
  const good = (lot: string) => ({ lot, grades: { wool: 5 } })
  expect(worstLot([good('A'), good('B')]).verdict).toBe('not-settled')
  expect(worstLot([{ lot: 'A', grades: { wool: 3 } }]).verdict).toBe('does-not-hold')
})

test('a grade that was not recorded is not a good one', () => {
  const lots = ['A', 'B', 'C'].map((lot) => ({
    lot,
    grades: { wool: 5, nylon: lot === 'C' ? undefined : 5 },
  }))
  expect(worstLot(lots)).toMatchObject({
    verdict: 'not-settled',
    meeting: 2,
    missing: [{ lot: 'C', test: 'nylon' }],
  })
})
