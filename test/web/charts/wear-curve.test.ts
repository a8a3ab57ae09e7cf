import { expect, test } from 'vitest'
import type { WearPicture } from '#api/science/pictures/wear-picture.ts'
import { lookOf } from '#test/support/a-look.ts'
import { wearCurve, wearTable } from '#web/charts/wear-curve.ts'

const picture: WearPicture = {
  title: 'Loss as the washes add up',
  says: '',
  finding: '',
  axis: { label: 'Washes', unit: 'washes' },
  outcomeLabel: 'loss',
  ticks: [0, 1, 2, 3].map((at) => ({ at, label: at === 0 ? 'before' : `${at} washes` })),
  groups: [
    {
      key: 'a',
      label: '35 min',
      chosen: true,
      points: [
        { at: 0, mean: 0 },
        { at: 1, mean: 0.4 },
        { at: 3, mean: 1.02, lower: 0.64, upper: 1.4 },
      ],
    },
    { key: 'b', label: '75 min', chosen: false, points: [{ at: 3, mean: 1.01 }] },
  ],
  wools: [
    {
      number: '3',
      points: [
        { at: 0, mean: 0 },
        { at: 3, mean: 2.57 },
      ],
    },
  ],
}

test('what was read between is a full line, what was not is dotted', () => {
  const lines = wearCurve(picture, lookOf(500)).configuration.data.datasets.filter(
    ({ showLine, borderColor }) => showLine === true && borderColor === '#5a2d6e',
  )
  expect(lines.map(({ data, borderDash }) => [data.map(({ x }) => x), borderDash !== undefined])).toEqual([
    [[0, 1], false],
    [[1, 3], true],
  ])
})

test('a reading that is pointed at says its group, its wear, its mean and its interval', () => {
  const [dots] = wearCurve(picture, lookOf(500)).configuration.data.datasets
  expect(dots?.data.map(({ told }) => told)).toEqual([
    '35 min, before: 0.00',
    '35 min, 1 washes: 0.40',
    '35 min, 3 washes: 1.02 (0.64 to 1.40)',
  ])
})

test('the table says “not read” where a group has no reading', () => {
  const { head, rows } = wearTable(picture)
  expect(head.map(({ words }) => words)).toEqual(['Washes', '35 min', '75 min', 'blue wool 3'])
  expect(rows.map(({ cells }) => cells)).toEqual([
    ['before', '0.00', 'not read', '0.00'],
    ['1 washes', '0.40', 'not read', 'not read'],
    ['3 washes', '1.02 (0.64 to 1.40)', '1.01', '2.57'],
  ])
})
