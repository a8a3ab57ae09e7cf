import { expect, test } from 'vitest'
import { lookOf } from '#test/support/a-look.ts'
import { steamPicture } from '#test/support/a-picture.ts'
import { ladder, ladderTable, skeinPoints } from '#web/charts/ladder.ts'

test('every skein is a point of one set, every session a thin line of its own', () => {
  const [skeins, ...sessions] = ladder(steamPicture(), lookOf(792)).configuration.data.datasets
  expect(skeins?.data).toHaveLength(24)
  expect(sessions.map(({ data, showLine, borderWidth }) => [data.length, showLine, borderWidth])).toEqual(
    Array.from({ length: 4 }, () => [6, true, 1]),
  )
})

test('nothing moves, and there is no legend and no floating box', () => {
  const { options } = ladder(steamPicture(), lookOf(792)).configuration
  expect(options).toMatchObject({
    animation: false,
    plugins: { legend: { display: false }, tooltip: { enabled: false } },
  })
})

// 1.86 is the loss of skein 3-6 in the worked example of the trial.
test('a skein that is pointed at says its level, its value and its note', () => {
  const picture = steamPicture()
  const levels = picture.levels.map((level) => ({
    ...level,
    skeins: level.skeins.map((skein) => ({ ...skein, note: 'grade 3-4' })),
  }))
  expect(skeinPoints({ ...picture, levels }).map(({ told }) => told)).toContain(
    'Skein 3-6, 50 min: 1.86, grade 3-4',
  )
})

// Row 35 of the worked example: 1.15, 0.68, 0.87, 1.40, mean 1.02.
test('the table has the same data: a row for each level, a column for each session', () => {
  const { head, rows } = ladderTable(steamPicture())
  expect(head.map(({ words }) => words)).toEqual([
    'Steam',
    'session 1',
    'session 2',
    'session 3',
    'session 4',
    'mean',
    'interval',
  ])
  expect(rows[3]).toEqual({
    key: '35',
    chosen: true,
    cells: ['35 min', '1.15', '0.68', '0.87', '1.40', '1.02', '–'],
  })
})

test('lost skeins stand in the table with their reasons', () => {
  const [first, ...rest] = steamPicture().levels
  if (first === undefined) throw new Error('The ladder has levels')
  const levels = [{ ...first, lost: [{ code: '2-1', reason: 'boiled dry' }] }, ...rest]
  const { head, rows } = ladderTable(steamPicture({ levels }))
  expect(head.at(-1)).toEqual({ words: 'lost' })
  expect(rows[0]?.cells.at(-1)).toBe('2-1, boiled dry')
})

test('larger letters take more room, below the axis and in all', () => {
  const [usual, doubled] = [1, 2].map(
    (textScale) => ladder(steamPicture(), lookOf(792, { textScale })).height,
  )
  expect(doubled).toBeGreaterThan(usual ?? Number.POSITIVE_INFINITY)
})
