import { expect, test } from 'vitest'
import { cardRating } from '#api/judging/card-rating.ts'
import { judgeLight } from '#api/judging/light.ts'
import { lightContrast } from '#api/judging/light-contrast.ts'
import { type LotOnCard, lightOfLots } from '#api/judging/light-of-lots.ts'
import { unchangedUpTo } from '#api/judging/unchanged-up-to.ts'
import { lightGradeText } from '#api/science/fastness/light-rating.ts'
import wools from '#test/reference/colour/blue-wool.json' with { type: 'json' }
import { judgedRecord, type RecordWritten, type SkeinWritten } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { numberIn, storyRows } from '#test/support/story-rows.ts'

const weeks = { 14: 'dE00_wk2', 28: 'dE00_wk4', 49: 'dE00_wk7', 70: 'dE00_wk10' } as const
const rows = storyRows('window-light.csv')
const colours = [...new Set(rows.map((row) => row.item ?? '').filter((item) => !item.startsWith('BW')))]

/** The three cards of the invented window, as they come from an import: the open part of one skein on each card. */
const windowRecord = (
  more: Partial<RecordWritten> = {},
  extra: readonly SkeinWritten[] = [],
): RecordWritten => ({
  pattern: 'P5',
  block: 'vessel',
  factors: [{ key: 'colourway', stage: 'dye', levels: colours }],
  sessions: ['window'],
  vessels: ['1', '2', '3'].map((card) => ({ label: `card ${card}`, stage: 'light', kind: 'card' })),
  skeins: [
    ...colours.map((code) => ({ code, level: { colourway: code } })),
    ...rows.map((row): SkeinWritten => {
      const item = row.item ?? ''
      const wool = /^BW(\d)$/.exec(item)?.[1]
      const results = Object.entries(weeks).map(([days, column]) => ({
        kind: 'dE00',
        value: numberIn(row, column) ?? 0,
        wear: { 'X1 days': Number(days) },
        basis: wool === undefined ? 'covered' : '',
      }))
      return {
        code: `${item} card ${row.card}`,
        in: [`card ${row.card}`],
        results,
        ...(wool === undefined ? { cutFrom: item } : { role: 'blue wool' as const, wool: Number(wool) }),
      }
    }),
    ...rows.flatMap((row): SkeinWritten[] =>
      numberIn(row, 'dark_twin_wk10') === undefined
        ? []
        : [
            {
              code: `${row.item} ${row.card} dark`,
              role: 'dark twin',
              cutFrom: row.item ?? '',
              results: [
                { kind: 'dE00', value: numberIn(row, 'dark_twin_wk10') ?? 0, wear: { 'X0 days': 70 } },
              ],
            },
          ],
    ),
    ...extra,
  ],
  ...more,
})
const light = (atLeast?: number) =>
  aCondition({
    question: 'light',
    outcome: 'dE00',
    wear: { 'X1 days': 70 },
    ...(atLeast === undefined ? {} : { atLeast }),
  })
const colourAt = (colour: string, atLeast?: number, record = windowRecord()) =>
  judgeLight(askedOf(judgedRecord(record), light(atLeast)))[colours.indexOf(colour)]

// What the invented story was made to show, at week 10 and at the first date at which a colour has changed by 1.7
const story = [
  ['food-grade pink', '1-2', 14],
  ['acid-dye turquoise', '2-3', 14],
  ['food-grade blue', '3', 14],
  ['food-grade red', '3-4', 14],
  ['acid-dye gold', '4-5', 28],
  ['acid-dye navy', '5-6', 70],
] as const
test.each(story)('%s stands light like blue wool %s', (colour, rating, days) => {
  const figures = colourAt(colour)?.figures ?? {}
  expect(lightGradeText(figures['rating at 70 days'] ?? 0)).toBe(rating)
  expect(figures.days).toBe(days)
  expect(lightGradeText(figures.rating ?? 0)).toBe(rating)
})

test.each(story)('%s holds at its lowest card, and three cards do not make three lots', (colour, rating) => {
  const reached = colourAt(colour, 1)
  expect(reached).toMatchObject({ answer: 'holds', n: 3, units: { many: 'cards' }, figures: { lots: 1 } })
  expect(reached?.cautions).toEqual([
    'This is one dye lot: several cards do not make several lots. Another lot may be different.',
  ])
  const above = Number(rating.split('-')[0]) + 2
  expect(colourAt(colour, above)?.answer).toBe('does-not-hold')
})

test('a rule that asks for no blue wool gets the bracket and no answer', () => {
  expect(colourAt('food-grade blue')).toMatchObject({
    answer: 'not-settled',
    reason: 'After 14 days in the window it stands like blue wool 3; the rule asks for no blue wool.',
  })
})

// domain.md section 7: 3 + ln(2.57 ÷ 1.87) ÷ ln(2.57 ÷ 1.40) = 3.52; blue-wool.json: 3 + log2(14 ÷ 10) = 3.4854
test('the bracket is read on ln ΔE: 1.87 between 2.57 and 1.40 is a 3-4', () => {
  const found = cardRating(1.87, [
    { number: 3, dE: 2.57 },
    { number: 4, dE: 1.4 },
  ])
  expect(found?.rating).toBeCloseTo(3.52, 2)
  expect(found?.text).toBe('blue wool 3-4')
  const example = wools.arithmetic_examples.find(({ a_rating }) => a_rating !== undefined)
  const published = cardRating(1 / 14, [
    { number: 3, dE: 1 / 10 },
    { number: 4, dE: 1 / 20 },
  ])
  expect(published?.rating).toBeCloseTo(example?.a_rating ?? 0, 4)
  expect(published?.text).toBe(`blue wool ${example?.a_half_step}`)
})

const ladder = [16, 8, 4, 2, 1, 0.5].map((dE, place) => ({ number: place + 1, dE, contrast: dE }))
/** A change that reads so on wools that halve from one to the next. */
const at = (rating: number) => 16 / 2 ** (rating - 1)
const onCards = (ratings: readonly (number | undefined)[], more: Partial<LotOnCard> = {}): LotOnCard[] =>
  ratings.map((rating, place) => {
    const dE = rating === undefined ? undefined : at(rating)
    return { card: `card ${place + 1}`, lot: 'lot A', days: 28, dE, contrast: dE, wools: ladder, ...more }
  })

test.each([
  ['just under the half step', 2.74, 'not-settled'],
  ['at the half step', 2.75, 'holds'],
  ['at it', 3, 'holds'],
])('a lowest card %s of blue wool 3 is judged so', (_where, lowest, answer) => {
  expect(lightOfLots(onCards([3.2, lowest, 3]), 3).answer).toBe(answer)
})

test('a colour whose best card reads less does not hold, and one whose cards lie on both sides is not settled', () => {
  expect(lightOfLots(onCards([2.5, 2, 2.2]), 3)).toMatchObject({ answer: 'does-not-hold', why: 'ratings' })
  expect(lightOfLots(onCards([2.5, 2, 3]), 3)).toMatchObject({ answer: 'not-settled', why: 'between' })
})

test('two cards never hold, and one card settles nothing', () => {
  expect(lightOfLots(onCards([3, 3]), 3)).toMatchObject({ answer: 'not-settled', why: 'few cards', cards: 2 })
  expect(lightOfLots(onCards([2, 2]), 3).answer).toBe('does-not-hold')
  expect(lightOfLots(onCards([2]), 3).answer).toBe('not-settled')
})

test('one lot that fails on all its cards fails the colour, whatever the others do', () => {
  const lots = [...onCards([3, 3, 3]), ...onCards([2, 2, 2], { lot: 'lot B' })]
  const found = lightOfLots(lots, 3)
  expect(found).toMatchObject({ answer: 'does-not-hold', lots: 2 })
  expect(found.headline[0]?.lot).toBe('lot B')
})

test.each([
  [1.69, 'early'],
  [1.7, 'ratings'],
])('a colour that has changed by %d is read: %s', (contrast, why) => {
  // Blue wool 6 has hardly changed and says nothing
  expect(lightOfLots(onCards([6, 6, 6], { contrast }), 6).why).toBe(why)
})

test('light is read at the first date at which the colour has changed by 1.7; later dates stand beside', () => {
  // 1.0 at 14 days, 2.0 at 28, 4.0 at 49: the second date counts
  const dates = [
    ...onCards([5, 5, 5], { days: 14 }),
    ...onCards([4, 4, 4], { days: 28 }),
    ...onCards([3, 3, 3], { days: 49 }),
  ]
  const found = lightOfLots(dates, 4)
  expect(found.headline.map(({ days }) => days)).toEqual([28])
  expect(found.answer).toBe('holds')
  expect(found.dates.map(({ days, ofMeans }) => [days, ofMeans?.rating])).toEqual([
    [14, 5],
    [28, 4],
    [49, 3],
  ])
})

test('a colour that hardly changes holds where the wool that is asked for has reached grade 4 and it changed less', () => {
  // 0.8 while wool 4 stands at 2.0: never 1.7 itself
  expect(lightOfLots(onCards([5.3, 5.3, 5.3]), 4)).toMatchObject({
    answer: 'holds',
    why: 'wool',
    wool: { number: 4, days: 28 },
  })
  // Wool 5 stands at 1.0 and has not reached it
  expect(lightOfLots(onCards([5.3, 5.3, 5.3]), 5)).toMatchObject({ answer: 'not-settled', why: 'early' })
  // On one card it changed as much
  expect(lightOfLots(onCards([5.3, 5.3, 4], { contrast: 1 }), 4).answer).toBe('not-settled')
})

test('a later date at which the colour changed as much as the wool takes that back', () => {
  const early = onCards([5.3, 5.3, 5.3], { contrast: 1 })
  const late = onCards([5.3, 5.3, 3.9], { days: 49, contrast: 1 })
  expect(lightOfLots([...early, ...late], 4).answer).toBe('not-settled')
})

test('dates that disagree settle nothing', () => {
  const dates = [...onCards([2, 2, 2], { days: 14 }), ...onCards([5, 5, 5], { days: 28 })]
  expect(lightOfLots(dates, 3)).toMatchObject({ answer: 'not-settled', why: 'dates disagree' })
})

test('a card is read by four blue wools of its own or not at all', () => {
  const wools = (n: number) => ladder.slice(0, n)
  expect(lightOfLots(onCards([3, 3, 3], { wools: wools(4) }), 3).answer).toBe('holds')
  const three = [...onCards([3, 3]), ...onCards([3], { card: 'card 3', wools: wools(3) })]
  expect(lightOfLots(three, 3)).toMatchObject({ answer: 'not-settled', why: 'few wools' })
})

test('a card on which the colour was not read never holds', () => {
  expect(lightOfLots(onCards([3, 3, 3, undefined]), 3)).toMatchObject({ answer: 'not-settled', why: 'blank' })
})

test('off the card it is below 1 or above 6', () => {
  expect(cardRating(17, ladder)).toMatchObject({ text: 'below blue wool 1', atMost: 0.5 })
  expect(cardRating(0.4, ladder)).toMatchObject({ text: 'above blue wool 6', atLeast: 6 })
  const above = onCards([6.5, 6.5, 6.5], { contrast: 2 })
  expect(lightOfLots(above, 6).answer).toBe('holds')
  expect(lightOfLots(above, 7).answer).toBe('not-settled')
  expect(lightOfLots(onCards([0.5, 0.5, 0.5]), 1).answer).toBe('does-not-hold')
})

test('a wool that has stopped changing is no bound', () => {
  // Wools 1 and 2 have both come to 8: nothing is known between them
  const stopped = ladder.map((wool) => (wool.number === 1 ? { ...wool, dE: 8, contrast: 8 } : wool))
  expect(cardRating(9, stopped)).toMatchObject({ text: 'below blue wool 2', atMost: 1.5 })
  expect(lightOfLots(onCards([1.8, 1.8, 1.8], { wools: stopped, contrast: 1 }), 1).answer).toBe('not-settled')
})

const darkened = (value: number) => [
  {
    code: 'another dark twin',
    role: 'dark twin' as const,
    cutFrom: 'food-grade blue',
    results: [{ kind: 'dE00', value, wear: { 'X0 days': 69 } }],
  },
]
test.each([
  [0.85, 'holds'],
  [0.86, 'not-settled'],
])('a twin that changed by %d in the dark: %s', (value, answer) => {
  const found = colourAt('food-grade blue', 2, windowRecord({}, darkened(value)))
  expect(found?.answer).toBe(answer)
})

test('a twin that changed in the dark is said', () => {
  expect(colourAt('food-grade blue', 2, windowRecord({}, darkened(2.1)))?.reason).toBe(
    'Its twin in the dark changed by 2.1 as well, so the change is not the light’s alone.',
  )
})

// R: qchisq(0.95, 3) = 7.814728, so 1.613 times the root mean square
test('a twin counts as unchanged as far as 95 of 100 unchanged readings go', () => {
  expect(unchangedUpTo({ kind: 'instrument', upperRms: 1 }, 0.85)).toBeCloseTo(Math.sqrt(7.814728 / 3), 6)
  expect(unchangedUpTo({ kind: 'twins', upperRms: 1 }, 0.85)).toBe(0.85)
})

test('halves under foil are never averaged in', () => {
  const foil = ['1', '2', '3'].map((card) => ({
    code: `foil ${card}`,
    cutFrom: 'food-grade blue',
    in: [`card ${card} (foil)`],
    results: [{ kind: 'dE00', value: 0.1, wear: { 'X1 days': 14 }, basis: 'own' }],
  }))
  expect(colourAt('food-grade blue', 3, windowRecord({}, foil))).toEqual(colourAt('food-grade blue', 3))
})

// domain.md section 4, a check of ΔE_F: (45, 25, −7) → (47, 22, −6) is 3.241
test('contrast is ΔE_F where the colour was read, ΔE*ab where only differences are known', () => {
  const result = { skeinId: 'a', wearKey: 'X1 days=28', value: 2.504, dL: 2, dA: -3, dB: 1 }
  const after = { skeinId: 'a', wear: { 'X1 days': 28 }, l: 47, a: 22, b: -6, readingsN: 1, spotsN: 5 }
  expect(lightContrast(result, [after])).toBeCloseTo(3.241, 3)
  expect(lightContrast(result, [])).toBeCloseTo(Math.sqrt(14), 10)
})

test('no sentence of an answer holds an id', () => {
  for (const atLeast of [undefined, 1, 3, 4.5, 6, 8])
    for (const { reason, cautions, limit } of judgeLight(
      askedOf(judgedRecord(windowRecord()), light(atLeast)),
    ))
      expect([reason, ...cautions, limit?.worstAt, ...(limit?.all ?? [])].join(' ')).not.toContain('#')
})
