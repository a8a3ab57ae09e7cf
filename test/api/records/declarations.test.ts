import { expect, test } from 'vitest'
import { rinses } from '#api/rinses/rinses.ts'

test('a record leaves with every column that its noun declares, and no other', () => {
  const at = new Date('2026-03-29T10:20:30Z')
  const row = {
    id: '00000000-0000-4000-8000-000000000000',
    version: 1,
    createdAt: at,
    skeinId: null,
    vesselId: null,
    number: 3,
    mlPerG: 20,
    temperatureC: null,
    minutes: null,
    clarity: 4.5,
    detergentGL: null,
    supersedesId: null,
    reason: null,
    superseded: false,
  }
  const shown = rinses.present({ ...row, ...{ inTheDatabaseAlone: 1 } })
  expect(Object.keys(shown)).toEqual(Object.keys(rinses.shown.shape))
  expect(shown).toEqual({ ...row, createdAt: '2026-03-29T10:20:30.000Z' })
})
