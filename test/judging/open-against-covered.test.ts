import { expect, test } from 'vitest'
import { type HalvesOnCard, openAgainstCovered } from '#api/judging/halves-over-cards.ts'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import type { Noise } from '#api/judging/noise.ts'
import { judgeOpenAgainstCovered } from '#api/judging/open-against-covered.ts'
import type { ReadingSeen } from '#db/trial-record.ts'
import sleep from '#test/reference/stats/gain-published-sleep.json' with { type: 'json' }
import { recordOf, type SkeinWritten } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'

const noise: Noise = { kind: 'twins', rms: 0.2, upperRms: 0.24, df: 9, floor: 0.18, from: 'two twins', n: 3 }
const onCards = (values: readonly (number | undefined)[]): HalvesOnCard[] =>
  values.map((dE, place) => ({ card: `card ${place + 1}`, dE }))
const judged = (values: readonly (number | undefined)[], known: Noise | undefined = noise, margin = 1) =>
  openAgainstCovered(onCards(values), { margin, confidence: 0.95, noise: known })

// R 4.2.2, t.test of ten published differences: one-sided limits 0.866995 and 2.293005
test('the limits are Student’s, of the mean over cards', () => {
  const { mean, t } = sleep.expected.least0
  const { raw } = openAgainstCovered(onCards(sleep.data.d), { margin: 1, confidence: 0.95, noise: undefined })
  expect(raw.extra).toBeCloseTo(mean, 10)
  expect(raw.lower).toBeCloseTo(t.oneSidedLower, 8)
  expect(raw.upper).toBeCloseTo(t.oneSidedUpper, 8)
})

// By hand: 0.5, 0.6, 0.7 less 0.2 are √0.21, √0.32, √0.45 = 0.4583, 0.5657, 0.6708; t(0.95; 2) = 2.919986
test('the measuring error is taken off each difference; the interval that decides is the widest', () => {
  const { raw, net, netOfUpper, interval } = judged([0.5, 0.6, 0.7])
  const values = [Math.sqrt(0.21), Math.sqrt(0.32), Math.sqrt(0.45)]
  const mean = values.reduce((sum, it) => sum + it, 0) / 3
  const half =
    (2.919986 * Math.sqrt(values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / 2)) / Math.sqrt(3)
  expect(net?.extra).toBeCloseTo(mean, 10)
  expect(net?.lower).toBeCloseTo(mean - half, 6)
  expect(raw.upper).toBeCloseTo(0.6 + (2.919986 * 0.1) / Math.sqrt(3), 6)
  expect(interval?.lower).toBe(Math.min(raw.lower ?? 0, net?.lower ?? 0))
  expect(interval?.upper).toBe(Math.max(raw.upper ?? 0, net?.upper ?? 0, netOfUpper?.upper ?? 0))
})

test('halves that differ by little hold, by much do not, and by something in between are not settled', () => {
  expect(judged([0.5, 0.6, 0.7]).answer).toBe('holds')
  expect(judged([2.9, 3.1, 3.3]).answer).toBe('does-not-hold')
  expect(judged([0.5, 0.9, 1.3]).answer).toBe('not-settled')
})

test.each([
  ['just over', 0.001, 'holds'],
  ['at', 0, 'not-settled'],
  ['just under', -0.001, 'not-settled'],
])('a margin %s the upper limit is judged so', (_where, more, answer) => {
  const upper = judged([0.5, 0.6, 0.7]).interval?.upper ?? 0
  expect(judged([0.5, 0.6, 0.7], noise, upper + more).answer).toBe(answer)
})

test.each([
  ['just under', -0.001, 'does-not-hold'],
  ['at', 0, 'not-settled'],
  ['just over', 0.001, 'not-settled'],
])('a margin %s the lower limit is judged so', (_where, more, answer) => {
  const lower = judged([2.9, 3.1, 3.3]).interval?.lower ?? 0
  expect(judged([2.9, 3.1, 3.3], noise, lower + more).answer).toBe(answer)
})

test('two cards never hold, one card and equal cards settle nothing, a blank card never holds', () => {
  expect(judged([0.5, 0.5001]).answer).toBe('not-settled')
  expect(judged([5]).answer).toBe('not-settled')
  expect(judged([0.5, 0.5, 0.5])).toMatchObject({ answer: 'not-settled', raw: { noSpread: true } })
  expect(judged([0.5, 0.6, 0.7, undefined])).toMatchObject({ answer: 'not-settled', blank: ['card 4'] })
})

test.each([
  ['unknown', undefined],
  ['only assumed', { ...noise, kind: 'planning' as const, df: undefined, n: 0 }],
  ['over half of the margin', { ...noise, floor: 0.51, df: 40 }],
  ['over a third of it and known by fewer than six degrees of freedom', { ...noise, floor: 0.34, df: 5 }],
])('a measuring error that is %s stops a “holds”, and not a plain “does not hold”', (_what, known) => {
  const stopped = openAgainstCovered(onCards([0.5, 0.6, 0.7]), { margin: 1, confidence: 0.95, noise: known })
  expect(stopped.answer).toBe('not-settled')
  expect(stopped.stopped).toMatch(/measuring error/)
  expect(
    openAgainstCovered(onCards([2.9, 3.1, 3.3]), { margin: 1, confidence: 0.95, noise: known }).answer,
  ).toBe('does-not-hold')
})

test('an error of a third of the margin, or known by six degrees of freedom, does not stop it', () => {
  expect(judged([0.5, 0.6, 0.7], { ...noise, floor: 1 / 3, df: 3 }).answer).toBe('holds')
  expect(judged([0.5, 0.6, 0.7], { ...noise, floor: 0.34, df: 6 }).answer).toBe('holds')
  expect(judged([0.5, 0.6, 0.7], { ...noise, floor: 0.5, df: 6 }).answer).toBe('holds')
})

test('several skeins on one card are one card', () => {
  const two = [{ card: 'card 1', dE: 0.4 }, { card: 'card 1', dE: 0.6 }, ...onCards([0.5, 0.6, 0.7]).slice(1)]
  expect(openAgainstCovered(two, { margin: 1, confidence: 0.95, noise: undefined }).raw).toEqual(
    judged([0.5, 0.6, 0.7], undefined).raw,
  )
})

type Card = { readonly open?: number; readonly foil?: number; readonly lost?: string }

/** One lot of Teal, a skein on each card: its open half and the half under foil, each with a change of its own. */
const cardsOf = (cards: readonly Card[]) =>
  recordOf({
    pattern: 'P5',
    block: 'vessel',
    factors: [{ key: 'colourway', stage: 'dye', levels: ['Teal'] }],
    sessions: ['window'],
    vessels: [
      { label: 'Teal A', stage: 'dye' },
      ...cards.map((_, place) => ({
        label: `card ${place + 1}`,
        stage: 'light' as const,
        kind: 'card' as const,
      })),
    ],
    skeins: cards.flatMap(({ open, foil, lost }, place): SkeinWritten[] => [
      { code: `T${place + 1}`, in: ['Teal A'], level: { colourway: 'Teal' } },
      {
        code: `T${place + 1} open`,
        cutFrom: `T${place + 1}`,
        in: [`card ${place + 1}`],
        ...(lost === undefined ? {} : { lost }),
        results:
          open === undefined
            ? []
            : [{ kind: 'dE00', value: open, wear: { 'X1 days': 70 }, basis: 'covered', spots: 5 }],
      },
      {
        code: `T${place + 1} foil`,
        cutFrom: `T${place + 1}`,
        in: [`card ${place + 1} (foil)`],
        results:
          foil === undefined
            ? []
            : [{ kind: 'dE00', value: foil, wear: { 'X1 days': 70 }, basis: 'own', spots: 5 }],
      },
    ]),
  })
const window = aCondition({
  question: 'open-against-covered',
  outcome: 'dE00',
  wear: { 'X1 days': 70 },
  margin: 1,
})
const answerOf = (record: ReturnType<typeof cardsOf>) =>
  judgeOpenAgainstCovered(askedOf(judgedTrial(record), window, { noise }))[0]

test('the half under foil is what the open half is held against, and is never averaged into it', () => {
  const opened = [{ open: 2.9 }, { open: 3.1 }, { open: 3.3 }]
  const alone = answerOf(cardsOf(opened))
  const beside = answerOf(cardsOf(opened.map((card) => ({ ...card, foil: 0.1 }))))
  expect(alone).toMatchObject({ answer: 'does-not-hold', n: 3, estimate: { unit: 'ΔE00' } })
  expect(alone?.estimate?.value).toBeCloseTo(3.1, 10)
  expect(beside).toEqual(alone)
})

test('a half that was lost before it was read lowers n and is said; one that was read keeps its reading', () => {
  const open = [{ open: 0.5 }, { open: 0.6 }, { open: 0.7 }]
  const lost = answerOf(cardsOf([...open, { lost: 'fell down' }]))
  expect(lost).toMatchObject({ answer: 'holds', n: 3 })
  expect(lost?.cautions).toContain('1 of 4 open halves lost before reading.')
  expect(answerOf(cardsOf([...open, { open: 4, lost: 'fell down' }]))).toMatchObject({
    answer: 'not-settled',
    n: 4,
  })
  expect(answerOf(cardsOf([...open, {}]))).toMatchObject({
    answer: 'not-settled',
    reason: 'Not read on card 4.',
  })
})

const reading = (
  skein: string,
  lab: readonly [number, number, number],
  more: Partial<ReadingSeen> = {},
): ReadingSeen => ({
  id: `#${skein} ${lab[0]}`,
  skeinId: `#${skein}`,
  wear: {},
  wet: false,
  placing: 1,
  meanL: lab[0],
  meanA: lab[1],
  meanB: lab[2],
  spotsN: 5,
  blindCode: null,
  supersedesId: null,
  reason: null,
  takenAt: null,
  createdAt: new Date('2026-05-01T10:00:00Z'),
  sittingId: '#May',
  method: 'instrument',
  instrumentId: null,
  illuminant: null,
  observer: null,
  geometry: null,
  apertureMm: null,
  inFrameStandardId: null,
  person: null,
  ...more,
})

// Sharma, Wu & Dalal (2005), table 1: (50, 2.6772, −79.7751) and (50, 0, −82.7485) differ by 2.0425
test('halves that were read in one sitting need no reading from before', () => {
  const record = cardsOf([{}])
  const wear = { 'X1 days': 70 }
  const readings = [
    reading('T1 open', [50, 0, -82.7485], { wear }),
    reading('T1 foil', [50, 2.6772, -79.7751]),
    reading('T1 foil', [60, 0, 0], { sittingId: '#March' }),
    reading('T1 open', [20, 0, 0], { wear, wet: true }),
  ]
  const read = judgeOpenAgainstCovered(askedOf(judgedTrial({ ...record, readings }), window, { noise }))[0]
  expect(read?.table?.mean).toBeCloseTo(2.0425, 4)
  const apart = readings.map((it) => (it.skeinId === '#T1 foil' ? { ...it, sittingId: '#March' } : it))
  const not = judgeOpenAgainstCovered(
    askedOf(judgedTrial({ ...record, readings: apart }), window, { noise }),
  )[0]
  expect(not).toMatchObject({ n: 0, reason: 'No open half was read together with its covered half.' })
})
