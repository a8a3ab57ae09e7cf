import { expect, test } from 'vitest'
import {
  afterTheStop,
  alikeAtFirst,
  cautionsShown,
  isOutside,
  moreCautions,
  nextSteps,
} from '#web/pages/trial/findings/finding-words.ts'
import { clausesOf, suffixOfHeadline } from '#web/parts/verdict-sentence.tsx'

const settled = { answer: 'holds', sessionsMore: null, sessionsIn: 4, sessionsPlanned: 4 } as const

test('a verdict is recorded before a sheet is made of it, and recorded once', () => {
  const before = nextSteps(settled, { recorded: false, locked: true })
  expect(before.map(({ kind }) => kind)).toEqual(['record', 'sheet'])
  const after = nextSteps(settled, { recorded: true, locked: true })
  expect(after.map(({ kind }) => kind)).toEqual(['sheet'])
})

test('without a locked rule there is nothing to record', () => {
  const steps = nextSteps(settled, { recorded: false, locked: false })
  expect(steps.map(({ kind }) => kind)).toEqual(['sheet'])
})

test('an open trial is planned further, and not recorded before its plan is done', () => {
  const open = { answer: 'not-settled', sessionsMore: 2, sessionsIn: 2, sessionsPlanned: 4 } as const
  expect(nextSteps(open, { recorded: false, locked: true })).toEqual([
    { kind: 'plan', words: 'Plan 2 more sessions' },
  ])
})

test('an open trial whose plan is done may be recorded so, and planned further first', () => {
  const open = { answer: 'not-settled', sessionsMore: 1, sessionsIn: 4, sessionsPlanned: 4 } as const
  expect(nextSteps(open, { recorded: false, locked: true })).toEqual([
    { kind: 'plan', words: 'Plan 1 more session' },
    { kind: 'record' },
  ])
})

test('where no number of sessions is known to settle it, the plan is there to look at', () => {
  const open = { answer: 'not-settled', sessionsMore: null, sessionsIn: 4, sessionsPlanned: 4 } as const
  expect(nextSteps(open, { recorded: true, locked: true })).toEqual([
    { kind: 'plan', words: 'Look at the plan' },
  ])
})

test('cautions of one title stand together, each sentence for itself', () => {
  const note = (text: string) => ({ kind: 'note', title: 'Please note', text }) as const
  const shown = cautionsShown({ cautions: [note('One.'), note('Two.')], notTested: [] })
  expect(shown).toEqual([{ kind: 'note', title: 'Please note', text: ['One.', 'Two.'] }])
})

test('what stands behind the headline of all parts is said once below them', () => {
  expect(suffixOfHeadline('On silk, 30 mL is enough (rule written after reading).')).toBe(
    'Rule written after reading.',
  )
  expect(suffixOfHeadline('On silk, 30 mL is enough.')).toBe('')
  const long =
    'Oat, lichen and brick pass: 3 of 3 lots each; plum fails: staining 3-4 (lot A) (dates not recorded).'
  expect(clausesOf(long)).toEqual([
    'Oat, lichen and brick pass: 3 of 3 lots each',
    'plum fails: staining 3-4 (lot A).',
  ])
})

test('what was not tested is the last caution', () => {
  const shown = cautionsShown({ cautions: [], notTested: ['light', 'rubbing'] })
  expect(shown.at(-1)?.text).toEqual(['Nothing is said about light and rubbing.'])
})

test('one caution more is said in the singular', () => {
  expect([moreCautions(1), moreCautions(2)]).toEqual(['One more caution', 'Two more cautions'])
})

test('a single level after the stop comes, several come', () => {
  const steps = (labels: string[]) => [
    { label: '20 min', afterStop: false },
    ...labels.map((label) => ({ label, afterStop: true })),
  ]
  expect(afterTheStop(steps(['0 min']))).toBe('0 min comes after the stop, at 20 min.')
  expect(afterTheStop(steps(['10 min', '0 min']))).toBe('10 min and 0 min come after the stop, at 20 min.')
  expect(afterTheStop(steps([]))).toBeUndefined()
})

const limits = [
  {
    outcome: 'staining',
    fibre: 'wool',
    wear: { W2: 3 },
    against: 'none',
    statistic: 'every unit',
    atLeast: 4,
  },
  { outcome: 'felting', wear: {}, against: 'none', question: 'within-limit', atMost: 2 },
  { outcome: 'staining', wear: { 'rub wet': 10 }, against: 'none', statistic: 'worst lot', atLeast: 4 },
] as const

test.each([
  ['staining of wool', 3.5, true],
  ['staining of wool', 4, false],
  ['felting', 2, false],
  ['felting', 3, true],
  ['staining rub wet=10', 3.5, true],
  ['staining rub wet=10', 4.5, false],
  ['rinses to 4', 9, false],
])('%s %f outside its limit: %s', (key, value, outside) => {
  expect(isOutside(key, value, limits)).toBe(outside)
})

test('labels that begin alike say it once; others stay as they are', () => {
  expect(alikeAtFirst(['staining', 'rinses']).rest).toEqual(['staining', 'rinses'])
  expect(alikeAtFirst(['staining after one wet contact']).rest).toEqual(['staining after one wet contact'])
})
