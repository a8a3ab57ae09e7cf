import { expect, test } from 'vitest'
import { doubtOf } from '#api/contract/bounds.ts'
import { type BenchSaid, cautions, cautionsAt, firstAid } from '#api/contract/cautions.ts'

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
    'Microwave burst 180 s is 1.5 times the usual 30–120 s; yarn that dries out can catch fire. Two minutes at a time, wet through, wrap vented, no metal, never left alone. Keep it?',
  )
})

test('a bath hotter than boiling calls for a vessel made for pressure, opened when it has none left', () => {
  expect(titles({ held: [{ key: 'peakTemp', value: 110 }] })).toContain('Pressure')
  expect(titles({ held: [{ key: 'set', value: 'pressure cooker, 15 min' }] })).toContain('Pressure')
  expect(titles({ held: [{ key: 'peakTemp', value: 95 }] })).not.toContain('Pressure')
  expect(titles({ held: [{ key: 'peakTemp', value: '205 °F' }] })).not.toContain('Pressure')
  expect(titles({ held: [{ key: 'peakTemp', value: '230 °F' }] })).toContain('Pressure')
  expect(textOf('Pressure')).toMatch(
    /made for pressure.*valve.*manual.*no pressure is left.*Never.*screwed jar/,
  )
})

test('metal-complex dyes are not poured away', () => {
  expect(titles({ held: [{ key: 'dye', value: 'premetallised black, 2 %' }] })).toContain(
    'Metal-complex dyes',
  )
  expect(titles({ held: [{ key: 'dye', value: '1:2 metal complex navy' }] })).toContain('Metal-complex dyes')
  expect(titles({ held: [{ key: 'dye', value: 'acid teal' }] })).not.toContain('Metal-complex dyes')
  expect(textOf('Metal-complex dyes')).toMatch(/chromium or cobalt.*safety data sheet.*hazardous waste/)
})

test('a microwave packet is vented where its wrap is named, and metal stays out', () => {
  expect(textOf('Microwave')).toMatch(/wrap vented.*never sealed/)
})

// Eyes: 15 minutes, ANSI/ISEA Z358.1. Burns: 20 minutes of cool running water, first-aid guidance of burn associations and the NHS.
test('first aid says what to do for eyes and burns, and whom to call', () => {
  const said = firstAid.map(({ title, text }) => `${title}. ${text}`).join(' ')
  expect(said).toMatch(/Eyes\. .*15 minutes/)
  expect(said).toMatch(/Burns\. .*cool running water.*20 minutes/)
  expect(said).toMatch(/poison centre or emergency number/)
  expect(cautions).toEqual(expect.arrayContaining([...firstAid]))
})

test('each caution says on what it rests', () => {
  for (const { title, source } of cautions) expect(`${title}: ${source}`).toMatch(/: .*\w/)
  expect(cautions.find(({ title }) => title === 'Jars')?.source).toBe('common practice')
})
