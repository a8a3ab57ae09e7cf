import { expect, test } from 'vitest'
import { controlsOf } from '#api/judging/controls.ts'
import type { Noise } from '#api/judging/noise.ts'
import { judgedRecord, type ResultWritten, type SkeinWritten } from '#test/support/a-record.ts'
import { aCondition } from '#test/support/asked-of.ts'

const wool = (value: number, more: Partial<ResultWritten> = {}): ResultWritten => ({
  kind: 'staining',
  value,
  wear: { W2: 5 },
  fibre: 'wool',
  ...more,
})
const staining = aCondition({
  question: 'within-limit',
  outcome: 'staining',
  fibre: 'wool',
  wear: { W2: 5 },
  atLeast: 4,
  direction: 'larger is better',
})
const change = aCondition({
  question: 'within-limit',
  outcome: 'change grade',
  wear: { W2: 5 },
  atLeast: 4,
  direction: 'larger is better',
})
const noWorse = aCondition({ question: 'no-worse', outcome: 'dE00', wear: { W2: 5 }, margin: 1 })
const noise: Noise = {
  kind: 'instrument',
  rms: 0.308,
  upperRms: 0.419,
  df: 7,
  floor: 0.28,
  from: 'the gauge check',
  n: 4,
}

const found = (
  skeins: readonly SkeinWritten[],
  conditions = [staining, change, noWorse],
  known: Noise | undefined = noise,
) => controlsOf(judgedRecord({ skeins }), conditions, known)

test.each([
  [3.5, true, 'Known bleeder KB: staining of wool after five warm hand washes 3-4, as it must.'],
  [4, false, 'Known bleeder KB: staining of wool after five warm hand washes 4; it should have bled.'],
  [4.5, false, 'Known bleeder KB: staining of wool after five warm hand washes 4-5; it should have bled.'],
])('a known bleeder that stained %d against “4 or better”: %s', (value, ok, sentence) => {
  expect(found([{ code: 'KB', role: 'known bleeder', results: [wool(value)] }])).toEqual([
    { role: 'known bleeder', code: 'KB', ok, found: sentence },
  ])
})

test('a known bleeder bleeds by yes or no as well', () => {
  const bled = aCondition({ question: 'within-limit', outcome: 'bled', atMost: 0 })
  const bleeder = (value: number): SkeinWritten[] => [
    { code: 'KB', role: 'known bleeder', results: [{ kind: 'bled', value }] },
  ]
  expect(found(bleeder(1), [bled])[0]?.ok).toBe(true)
  expect(found(bleeder(0), [bled])[0]?.ok).toBe(false)
  // Also where the rule names no limit of staining
  expect(found(bleeder(1), [noWorse])[0]?.ok).toBe(true)
  expect(found(bleeder(0), [noWorse])[0]?.ok).toBe(false)
})

test('a known good must pass every limit', () => {
  const good = (...results: ResultWritten[]): SkeinWritten[] => [{ code: 'KG', role: 'known good', results }]
  const graded = (value: number) => wool(value, { kind: 'change grade', fibre: '' })
  expect(found(good(wool(4), graded(4)))[0]).toMatchObject({ ok: true })
  expect(found(good(wool(4), graded(3.5)))[0]).toEqual({
    role: 'known good',
    code: 'KG',
    ok: false,
    found: 'Known good KG: change in colour after five warm hand washes 3-4; 4 or better was expected.',
  })
  expect(found(good(wool(4)))[0]?.found).toContain(
    'change in colour after five warm hand washes not recorded',
  )
})

test('a part that was cut from a control counts with it', () => {
  const skeins: SkeinWritten[] = [
    { code: 'KG', role: 'known good', results: [wool(5)] },
    { code: 'KG rub', cutFrom: 'KG', results: [wool(3)] },
  ]
  expect(found(skeins)[0]?.ok).toBe(false)
})

test.each([
  [5, true],
  [4.5, true],
  [4, false],
])('undyed yarn that stained %d: %s, whatever the rule allows', (value, ok) => {
  expect(found([{ code: 'BL', role: 'blank', results: [wool(value)] }])[0]?.ok).toBe(ok)
})

test('a blank is held against the limit of a staining that was measured', () => {
  const measured = aCondition({
    question: 'within-limit',
    outcome: 'staining dE76',
    wear: { W5: 1 },
    atMost: 4,
  })
  const blank = (value: number): SkeinWritten[] => [
    { code: 'BL', role: 'blank', results: [{ kind: 'staining dE76', value, wear: { W5: 1 } }] },
  ]
  expect([found(blank(4), [measured])[0]?.ok, found(blank(4.1), [measured])[0]?.ok]).toEqual([true, false])
})

const dark = (value: number): SkeinWritten[] => [
  { code: 'DT', role: 'dark twin', results: [{ kind: 'dE00', value, wear: { 'X0 days': 70 } }] },
]
// 0.419 × √(7.814728 ÷ 3) = 0.676
test.each([
  [0.67, true, 'Dark twin DT: changed by 0.67, no more than 0.68 that measuring alone can show.'],
  [0.7, false, 'Dark twin DT: changed by 0.70, more than the 0.68 that measuring alone can show.'],
])('a dark twin that changed by %d under an upper limit of 0.419: %s', (value, ok, sentence) => {
  expect(found(dark(value))).toEqual([{ role: 'dark twin', code: 'DT', ok, found: sentence }])
})

test('a twin whose own changes are the measuring error may change by the margin at most', () => {
  const twins: Noise = { ...noise, kind: 'twins', upperRms: 3 }
  expect(found(dark(1), undefined, twins)[0]?.ok).toBe(true)
  expect(found(dark(1.01), undefined, twins)[0]?.ok).toBe(false)
})

test('what was not recorded is neither right nor wrong', () => {
  const controls = ['known bleeder', 'known good', 'blank', 'dark twin'] as const
  expect(found(controls.map((role) => ({ code: role, role }))).map(({ ok }) => ok)).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
  ])
})

test('treated skeins, twins and wools are no controls', () => {
  expect(
    found([{ code: 'A' }, { code: 'T', role: 'twin' }, { code: 'BW1', role: 'blue wool', wool: 1 }]),
  ).toEqual([])
})
