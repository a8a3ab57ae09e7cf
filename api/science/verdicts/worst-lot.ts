import { counted } from './figure.ts'
import type { Verdict } from './verdict.ts'

/** A claim is about lots: yarn from one bath. Fewer than this say nothing about the next one. */
export const fewestLots = 3

/** One dye lot with every grade that it got: staining by fibre, wet contact, rub. Undefined: not recorded. */
export type GradedLot = {
  readonly lot: string
  readonly grades: Readonly<Record<string, number | undefined>>
}

export type WorstLot = {
  readonly verdict: Verdict
  /** The lowest grade of all, with the lot and test that got it. */
  readonly worst: { readonly lot: string; readonly test: string; readonly grade: number } | undefined
  readonly lots: number
  /** Lots that meet the limit in every grade. */
  readonly meeting: number
  /** The worst grade is neither good enough nor a failure. */
  readonly inBetween: boolean
  readonly missing: readonly { readonly lot: string; readonly test: string }[]
  /** If all lots meet it: up to this share of all lots to come may still fail (95 %); 0–1. */
  readonly failingUpTo: number | undefined
  readonly why: string
}

/**
 * Does a colourway hold, by its worst lot? All grades at `atLeast` or better: it holds. Any at `failsAt` or worse: it does not.
 * In between, with fewer than three lots, or with a blank, it is not settled. The mean grade plays no part: a customer
 * gets one lot, not the average.
 *
 * @throws RangeError without any lot
 *
 * @example
 * const lot = (lot, wool, nylon) => ({ lot, grades: { wool, nylon } })
 * worstLot([lot('A', 4.5, 5), lot('B', 5, 3.5), lot('C', 4.5, 4)]) // { verdict: 'not-settled', worst: { lot: 'B', test: 'nylon', grade: 3.5 }, inBetween: true, meeting: 2 }
 */
export function worstLot(
  lots: readonly GradedLot[],
  { atLeast = 4, failsAt = 3 }: { readonly atLeast?: number; readonly failsAt?: number } = {},
): WorstLot {
  if (lots.length === 0) throw new RangeError('A claim needs at least one lot.')
  const graded = lots.flatMap(({ lot, grades }) =>
    Object.entries(grades).map(([test, grade]) => ({ lot, test, grade })),
  )
  const missing = graded.filter((it) => it.grade === undefined).map(({ lot, test }) => ({ lot, test }))
  let worst: WorstLot['worst']
  for (const { lot, test, grade } of graded)
    if (grade !== undefined && (worst === undefined || grade < worst.grade)) worst = { lot, test, grade }
  const below = new Set(
    graded.filter((it) => it.grade === undefined || it.grade < atLeast).map((it) => it.lot),
  )
  const names = new Set(lots.map((it) => it.lot))
  const meeting = names.size - below.size
  const inBetween = worst !== undefined && worst.grade > failsAt && worst.grade < atLeast
  const allMeet = worst !== undefined && meeting === names.size
  const it = {
    worst,
    lots: names.size,
    meeting,
    inBetween,
    missing,
    failingUpTo: allMeet ? failingUpTo(names.size) : undefined,
  }
  if (worst === undefined) return { ...it, verdict: 'not-settled', why: 'No grade was recorded.' }
  const where = `${worst.test} of lot ${worst.lot}`
  if (worst.grade <= failsAt) return { ...it, verdict: 'does-not-hold', why: `The worst is ${where}.` }
  if (inBetween) return { ...it, verdict: 'not-settled', why: `In between: the worst is ${where}.` }
  if (missing.length > 0) return { ...it, verdict: 'not-settled', why: 'Not every grade was recorded.' }
  if (names.size < fewestLots)
    return {
      ...it,
      verdict: 'not-settled',
      why: `${counted(names.size, { one: 'lot is', many: 'lots are' })} too few: a claim needs three.`,
    }
  return { ...it, verdict: 'holds', why: `All ${names.size} lots meet it; the worst is ${where}.` }
}

/**
 * What no failure in n lots still leaves open: the share of lots that may fail, at 95 %.
 *
 * @param lots        All of them without failure; 1 or more.
 * @param confidence  Between 0 and 1.
 * @see Exact binomial limit for no failures, 1 − (1 − confidence)^(1/n).
 *
 * @example
 * failingUpTo(3) // 0.632
 */
export function failingUpTo(lots: number, confidence = 0.95): number {
  if (!(lots >= 1)) throw new RangeError('Lots are counted from 1.')
  return 1 - (1 - confidence) ** (1 / lots)
}
