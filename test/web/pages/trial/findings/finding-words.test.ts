import { expect, test } from 'vitest'
import {
  afterTheStop,
  alikeAtFirst,
  cautionsShown,
  isOutside,
  moreCautions,
  nextSteps,
} from '#web/pages/trial/findings/finding-words.ts'

const settled = { answer: 'holds', sessionsMore: null, sessionsIn: 4, sessionsPlanned: 4 } as const

test('a verdict is declared before a sheet is made of it, and declared once', () => {
  const before = nextSteps(settled, { declared: false, locked: true })
  expect(before.map(({ kind }) => kind)).toEqual(['declare', 'sheet'])
  const after = nextSteps(settled, { declared: true, locked: true })
  expect(after.map(({ kind }) => kind)).toEqual(['sheet'])
})

test('without a locked rule there is nothing to declare', () => {
  const steps = nextSteps(settled, { declared: false, locked: false })
  expect(steps.map(({ kind }) => kind)).toEqual(['sheet'])
})

test('an open trial is planned further, and not declared before its plan is done', () => {
  const open = { answer: 'not-settled', sessionsMore: 2, sessionsIn: 2, sessionsPlanned: 4 } as const
  expect(nextSteps(open, { declared: false, locked: true })).toEqual([
    { kind: 'plan', words: 'Plan 2 more sessions' },
  ])
})

test('an open trial whose plan is done may be declared so, and planned further first', () => {
  const open = { answer: 'not-settled', sessionsMore: 1, sessionsIn: 4, sessionsPlanned: 4 } as const
  expect(nextSteps(open, { declared: false, locked: true })).toEqual([
    { kind: 'plan', words: 'Plan 1 more session' },
    { kind: 'declare' },
  ])
})

test('where no number of sessions is known to settle it, the plan is there to look at', () => {
  const open = { answer: 'not-settled', sessionsMore: null, sessionsIn: 4, sessionsPlanned: 4 } as const
  expect(nextSteps(open, { declared: true, locked: true })).toEqual([
    { kind: 'plan', words: 'Look at the plan' },
  ])
})

test('a noise that nobody read is called a guess, and a caution about noise is not said twice', () => {
  const noise = {
    floor: 0.3,
    rms: 0.32,
    from: 'a planning value, for no twin was read',
    n: 0,
    upperRms: 0.32,
    df: null,
  }
  const titles = (cautions: { kind: 'note'; title: string; text: string }[]) =>
    cautionsShown({ cautions, noise, notTested: [] }).map(({ title }) => title)
  expect(titles([])).toEqual(['The noise is a guess'])
  expect(titles([{ kind: 'note', title: 'Near the noise', text: '' }])).toEqual(['Near the noise'])
})

test('what was not tested is the last caution', () => {
  const shown = cautionsShown({ cautions: [], noise: null, notTested: ['light', 'rubbing'] })
  expect(shown.at(-1)?.text).toBe('Nothing is said about light and rubbing.')
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
  { outcome: 'staining', fibre: 'wool', wear: { W2: 3 }, statistic: 'every unit', atLeast: 4 },
  { outcome: 'felting', wear: {}, statistic: 'every unit', atMost: 2 },
  { outcome: 'staining', wear: { 'rub wet': 10 }, statistic: 'worst lot', atLeast: 4 },
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
