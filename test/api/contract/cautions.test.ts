import { expect, test } from 'vitest'
import { doubtOf } from '#api/contract/bounds.ts'
import { type BenchSaid, cautions, cautionsAt } from '#api/contract/cautions.ts'

const titles = (said: Partial<BenchSaid>) =>
  cautionsAt({ vesselKinds: [], factors: [], held: [], ...said }).map(({ title }) => title)
const textOf = (title: string) => cautions.find((it) => it.title === title)?.text ?? ''

test('jars call for loose lids, and say why: pressure and glass', () => {
  expect(titles({ vesselKinds: ['jar'] })).toEqual(['Jars'])
  expect(textOf('Jars')).toMatch(/Lids loose.*pressure.*glass/)
})

test('a packet in the microwave is wet through, vented, without metal, two minutes at a time and never alone', () => {
  expect(titles({ vesselKinds: ['packet'], factors: [{ key: 'microwavePower', stage: 'set' }] })).toEqual([
    'Microwave',
  ])
  expect(titles({ vesselKinds: ['packet'], held: [{ key: 'set', value: 'Microwave, 800 W' }] })).toEqual([
    'Microwave',
  ])
  expect(textOf('Microwave')).toMatch(/wet through.*vented.*no metal.*Two minutes at a time.*Never leave it/)
})

test('a packet that is not in the microwave is steamed', () => {
  expect(titles({ vesselKinds: ['packet'], factors: [{ key: 'steamTime', stage: 'set' }] })).toEqual([
    'Steam',
  ])
})

test('powder is a sensitiser and wants an FFP2 or N95 mask, gloves, apron and eye protection', () => {
  expect(titles({ held: [{ key: 'dye', value: 'teal acid dye, 1.5 % depth' }] })).toContain('Powder')
  expect(titles({ factors: [{ key: 'colourway', stage: 'dye' }] })).toEqual(['Powder'])
  expect(textOf('Powder')).toMatch(/sensitiser.*FFP2 or N95 mask.*Gloves, apron, eye protection\./)
})

test('a card in the window calls for none of them', () => {
  expect(titles({ vesselKinds: ['card'], factors: [{ key: 'light', stage: 'light' }] })).toEqual([])
})

test('a microwave burst of more than two minutes is asked about, and the question says why', () => {
  expect(doubtOf('microwaveBurst', 120)).toBeUndefined()
  expect(doubtOf('microwaveBurst', 180)).toBe(
    'Microwave burst 180 s is twice the usual 30–120 s; yarn that dries out can catch fire. Two minutes at a time, wet through and vented, never left alone. Keep it?',
  )
})
