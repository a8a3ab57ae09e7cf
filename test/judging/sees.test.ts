import { describe, expect, test } from 'vitest'
import { detectableDifference, placingsNeeded } from '#api/judging/detectable-difference.ts'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { judgeSees, seesMargin } from '#api/judging/sees.ts'
import type { ReadingSeen } from '#db/trial-record.ts'
import { recordOf } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { expectClose } from '#test/support/close-to.ts'
import { storyRows } from '#test/support/story-rows.ts'

type Read = {
  readonly skein: string
  readonly day: number
  readonly sitting?: string
  readonly lab: readonly [number, number, number]
  readonly method?: 'instrument' | 'photo'
  readonly wet?: boolean
}

const sees = aCondition({ question: 'sees', outcome: 'dE00', margin: 1 })

/** A check of the readings: skeins that nobody changes, read on some days. */
function readings(all: readonly Read[]) {
  const skeins = [...new Set(all.map(({ skein }) => skein))]
  const record = recordOf({
    pattern: 'P0',
    factors: [{ key: 'twin', stage: 'dry', levels: ['as it is', 'one step more'], reference: 'as it is' }],
    skeins: skeins.map((code) => ({ code })),
  })
  return judgedTrial({
    ...record,
    readings: all.map(
      ({ skein, day, sitting, lab: [meanL, meanA, meanB], method, wet }, place): ReadingSeen => {
        const takenAt = new Date(Date.UTC(2026, 2, day, 10, place % 60))
        return {
          id: `#reading ${place}`,
          skeinId: `#${skein}`,
          wear: {},
          wet: wet ?? false,
          placing: 1,
          meanL,
          meanA,
          meanB,
          spotsN: 1,
          blindCode: null,
          supersedesId: null,
          reason: null,
          takenAt,
          createdAt: takenAt,
          sittingId: `#${sitting ?? `day ${day}`}`,
          method: method ?? 'instrument',
          instrumentId: null,
          illuminant: null,
          observer: null,
          geometry: null,
          apertureMm: null,
          inFrameStandardId: null,
          person: null,
        }
      },
    ),
  })
}

describe('the story of the phone', () => {
  const story = readings(
    storyRows('phone-noise.csv').map(({ swatch = '', frame = '', L, a, b }) => ({
      skein: swatch,
      day: Number(frame.slice(1, 2)),
      sitting: frame,
      lab: [Number(L), Number(a), Number(b)],
      method: 'photo',
    })),
  )
  // Worked out by a second program (Python) from the mean squares and the chi-squared distribution.
  test('single photographs are lost in 7.8 of b*, which no margin of 3.0 stands', () => {
    const [found] = judgeSees(askedOf(story, { ...sees, margin: 3 }))
    expect(found).toMatchObject({
      levelId: null,
      answer: 'does-not-hold',
      n: 3,
      units: { one: 'day', many: 'days' },
    })
    expectClose(found?.estimate?.value, 7.770765728034784, 1e-9)
    expectClose(found?.estimate?.lower, 6.623761750869976, 1e-6)
    expectClose(found?.estimate?.upper, 10.227057192628218, 1e-6)
    expectClose(found?.figures['day b'], 2.737786732102445, 1e-9)
    expectClose(found?.figures['placing b'], 0.4546060565661955, 1e-9)
    expect(found?.reason).toBe(
      'With single readings it cannot tell differences smaller than 7.77 in b* (6.62 to 10.23); a margin of 3.0 needs 1.50 or less.',
    )
  })
})

describe('one axis', () => {
  // By hand: placings differ by 0.2, so 0.02 with 4 df; days by 0.4, so 2 × 2 × 0.2² ÷ 2 = 0.16 with 2 df: (0.16 − 0.02) ÷ 2 = 0.07.
  const things = [
    [
      [5, 5.2],
      [5.6, 5.4],
    ],
    [
      [8, 8.2],
      [7.6, 7.8],
    ],
  ]
  test('days and placings come apart, and only placings are averaged away', () => {
    const one = detectableDifference(things, 1)
    const two = detectableDifference(things, 2)
    if ('unavailable' in one || 'unavailable' in two) throw new Error('both are known')
    expectClose(one.placing ** 2, 0.02, 1e-9)
    expectClose(one.day ** 2, 0.07, 1e-9)
    expectClose(one.smallest, 2.8 * Math.sqrt(0.09), 1e-9)
    expectClose(two.smallest, 2.8 * Math.sqrt(0.08), 1e-9)
    // The mean square of days alone, 0.16 ÷ 2, with its 2 df: χ²(0.8; 2) = −2 ln 0.2, χ²(0.2; 2) = −2 ln 0.8.
    expectClose(two.df, 2, 1e-9)
    expectClose(two.lower, two.smallest * Math.sqrt(2 / (-2 * Math.log(0.2))), 1e-9)
    expectClose(two.upper, two.smallest * Math.sqrt(2 / (-2 * Math.log(0.8))), 1e-9)
    // Satterthwaite for single placings: 0.09² ÷ (0.08² ÷ 2 + 0.01² ÷ 4).
    expectClose(one.df, 0.09 ** 2 / (0.08 ** 2 / 2 + 0.01 ** 2 / 4), 1e-9)
  })

  // Domain notes: an instrument with 0.3 an axis needs 3 placings or more for a margin of 1.0.
  // (0.5 ÷ 2.8)² = 0.031888; less 0.17² that is 0.002988, and 0.3² is 30.1 times as much; 0.18² is more than all of it.
  test('more placings help against placings, never against days', () => {
    expect(placingsNeeded({ placing: 0.3, day: 0 }, 0.5)).toBe(3)
    expect(placingsNeeded({ placing: 0.3, day: 0.17 }, 0.5)).toBe(31)
    expect(placingsNeeded({ placing: 0.3, day: 0.18 }, 0.5)).toBeUndefined()
    expect(placingsNeeded({ placing: 0.01, day: 0 }, 0.5)).toBe(1)
  })
})

test.each([
  [0.3, 0.499, 'holds'],
  [0.3, 0.5, 'holds'],
  [0.3, 0.501, 'not-settled'],
  [0.5, 0.9, 'not-settled'],
  [0.501, 0.9, 'does-not-hold'],
] as const)('limits of %d to %d beside a margin of 1.0: %s', (lower, upper, answer) => {
  expect(seesMargin({ lower, upper }, 1)).toBe(answer)
})

describe('what is in the record', () => {
  const steps = [0, 0.1, -0.05, 0.08, 0.02, -0.1, 0.04, -0.02, 0.06]
  const twins = (size: number, count = 3) =>
    Array.from({ length: count }, (_, skein) =>
      [1, 2, 3].flatMap((day) =>
        [0, 1, 2].map((placing): Read => {
          const by = size * (steps[(skein * 4 + day * 2 + placing * 5) % 9] ?? 0)
          return { skein: `S${skein}`, day, lab: [50 + skein + by, 10 - by / 2, 5 + by / 3] }
        }),
      ),
    ).flat()

  test('a fine meter sees a margin of 1.0 with the placings that are taken, a coarse one does not', () => {
    const [fine] = judgeSees(askedOf(readings(twins(1)), sees))
    expect(fine).toMatchObject({ answer: 'holds', n: 3, figures: { placings: 3, skeins: 3, margin: 1 } })
    expect(fine?.reason).toMatch(/^With means of 3 readings it can tell differences of 0\.\d\d in L\* /)
    expect(judgeSees(askedOf(readings(twins(20)), sees))[0]?.answer).toBe('does-not-hold')
  })

  test('a rule of the first version, 0.5 at most, asked for a margin of 1.0', () => {
    const old = aCondition({ question: 'sees', outcome: 'dE00', atMost: 0.5 })
    const [found] = judgeSees(askedOf(readings(twins(1)), old))
    expect(found?.figures.margin).toBe(1)
    expect(found?.answer).toBe('holds')
  })

  test('a day alone says nothing of another day, however often it was read', () => {
    const [found] = judgeSees(askedOf(readings(twins(1).filter(({ day }) => day === 1)), sees))
    expect(found).toMatchObject({
      answer: 'not-settled',
      estimate: null,
      reason: 'All readings are of one day: read the same skeins again on another day.',
    })
  })

  test('skeins that were read once, and wet ones, are no repeats', () => {
    const once = [1, 2].map((n): Read => ({ skein: `S${n}`, day: n, lab: [50 + n, 0, 0] }))
    const wet = twins(1).map((read) => ({ ...read, wet: true }))
    expect(judgeSees(askedOf(readings([...once, ...wet]), sees))[0]).toMatchObject({
      answer: 'not-settled',
      reason: 'No skein was read twice: read the same skeins again on another day.',
    })
  })

  test('readings of another method do not count towards this one', () => {
    const photo = twins(40, 1)
      .slice(0, 3)
      .map((read): Read => ({ ...read, sitting: 'photo', method: 'photo' }))
    const alone = judgeSees(askedOf(readings(twins(1)), sees))[0]
    const mixed = judgeSees(askedOf(readings([...twins(1), ...photo]), sees))[0]
    expect(mixed?.estimate).toEqual(alone?.estimate)
  })

  test('copied readings and a missing margin are said', () => {
    expect(judgeSees(askedOf(readings(twins(0)), sees))[0]?.reason).toBe(
      'All readings are the same: were they copied?',
    )
    const without = aCondition({ question: 'sees', outcome: 'dE00' })
    expect(judgeSees(askedOf(readings(twins(1)), without))[0]?.reason).toBe(
      'Name the margin that it must be fine enough for.',
    )
  })
})
