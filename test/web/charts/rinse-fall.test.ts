import { expect, test } from 'vitest'
import { lookOf } from '#test/support/a-look.ts'
import { rinseFall, rinseTable } from '#web/charts/rinse-fall.ts'

const picture = {
  title: 'How the rinse water cleared',
  says: '',
  finding: '',
  measured: {
    label: '0 min of steam',
    points: [
      { at: 0, share: 100 },
      { at: 1, share: 34 },
      { at: 2, share: 1.8 },
    ],
  },
  dilution: {
    label: 'dilution alone',
    points: [
      { at: 0, share: 100 },
      { at: 1, share: 5.6 },
      { at: 2, share: 0.3 },
    ],
  },
}

test('the fall is drawn on a logarithmic axis', () => {
  expect(rinseFall(picture, lookOf(500)).configuration.options?.scales?.y?.type).toBe('logarithmic')
})

test('shares are written with as many figures as they carry', () => {
  expect(
    rinseTable(picture).rows.map(({ cells }) => cells.map((cell) => cell.replace('\u00a0', ' '))),
  ).toEqual([
    ['bath', '100 %', '100 %'],
    ['1', '34 %', '5.6 %'],
    ['2', '1.8 %', '0.3 %'],
  ])
})
