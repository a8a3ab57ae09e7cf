import { groupBy } from '#api/science/group-by.ts'
import { pairedExtraLoss } from '#api/science/verdicts/paired-extra-loss.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { figure, margin as marginInWords, percent, sentenceCase } from '#api/words/numbers.ts'
import type { Answer } from './answer.ts'
import type { Asked, Engine } from './asked.ts'
import { judgedRows } from './judged-rows.ts'
import { levelName } from './level-name.ts'
import { testInWords } from './limit-in-words.ts'
import { sessionWords } from './units-in-words.ts'

const fewestSessions = 3

/** The session means of one level; a blank one is `undefined`. */
export type SessionMeans = ReadonlyMap<string, number | undefined>

export type NextLevel = {
  readonly answer: Verdict
  /** Sessions that hold both levels. */
  readonly n: number
  readonly mean: number | undefined
  /** The level’s mean less the next level’s, over sessions that hold both. */
  readonly difference: number | undefined
  readonly lower: number | undefined
  readonly upper: number | undefined
  readonly se: number | undefined
  readonly df: number | undefined
  readonly why: 'blank' | 'few' | 'within' | 'outside' | 'no spread' | 'nothing'
}

/**
 * Is the mean of a level within a margin of the next level’s mean? Described and not tested: the means decide, and the
 * one-sided limits of the difference (differences within sessions, Student’s t) stand beside.
 *
 * @param confidence  One-sided.
 *
 * @example
 * const [level, next] = [new Map([['1', 36], ['2', 35.7], ['3', 34.6]]), new Map([['1', 34.7], ['2', 35], ['3', 34.9]])]
 * nextLevel(level, next, { margin: 1, confidence: 0.95 }) // { answer: 'holds', difference: 0.5667, upper: 1.9 }
 */
export function nextLevel(
  level: SessionMeans,
  next: SessionMeans,
  { margin, confidence }: { readonly margin: number; readonly confidence: number },
): NextLevel {
  const shared = [...level.keys()].filter((session) => next.has(session))
  const both = shared.flatMap((session): [string, number, number][] => {
    const [here, there] = [level.get(session), next.get(session)]
    return here === undefined || there === undefined ? [] : [[session, here, there]]
  })
  const column = (place: 1 | 2) => ({
    vessels: [],
    units: [],
    blocks: new Map(both.map((row) => [row[0], row[place]])),
  })
  const { mean, extra, se, df, lower, upper, noSpread } = pairedExtraLoss(column(1), column(2), {
    confidence,
  })
  const found = { n: both.length, mean, difference: extra, lower, upper, se, df }
  if (extra === undefined) return { ...found, answer: 'not-settled', why: 'nothing' }
  // A rounding in the last digits must not decide.
  if (Math.abs(extra) > margin + 1e-9) return { ...found, answer: 'does-not-hold', why: 'outside' }
  if (both.length < shared.length) return { ...found, answer: 'not-settled', why: 'blank' }
  if (both.length < fewestSessions) return { ...found, answer: 'not-settled', why: 'few' }
  return { ...found, answer: 'holds', why: noSpread ? 'no spread' : 'within' }
}

/** Every level against the one above it; nothing stands above the top one, which so far holds. */
export const judgeNextLevel: Engine = (asked) => {
  const rows = groupBy(judgedRows(asked), (row) => row.levelId)
  const meansOf = (levelId: string): SessionMeans => {
    const read = (rows.get(levelId) ?? []).filter((row) => row.value !== undefined || row.lost === undefined)
    return new Map(
      [...groupBy(read, (row) => row.block)].map(([block, mine]) => {
        const values = mine.flatMap((row) => row.value ?? [])
        const whole = values.length === mine.length
        return [block, whole ? values.reduce((sum, it) => sum + it, 0) / values.length : undefined]
      }),
    )
  }
  return asked.levels.map((level, place) => {
    const above = asked.levels[place + 1]
    const { condition, confidence } = asked
    const margin = condition.margin ?? 1
    if (!above) return topLevel(asked, level.id)
    return ofLevel(asked, {
      levelId: level.id,
      above: levelName(above, asked.factor),
      margin,
      found: nextLevel(meansOf(level.id), meansOf(above.id), { margin, confidence }),
    })
  })
}

function topLevel(asked: Asked, levelId: string): Answer {
  return {
    ...common(asked),
    levelId,
    answer: 'holds',
    reason: 'Nothing above it was tried, so there is no next level to compare it with.',
    n: 0,
    estimate: null,
    table: null,
    cautions: [],
    more: null,
  }
}

function ofLevel(
  asked: Asked,
  { levelId, above, margin, found }: { levelId: string; above: string; margin: number; found: NextLevel },
): Answer {
  const { condition, confidence } = asked
  const { n, answer, difference, lower, upper } = found
  const test = testInWords(condition)
  const within = marginInWords(margin)
  const shown = upper !== undefined && upper < margin
  const words = sessionWords(asked.trial)
  return {
    ...common(asked),
    levelId,
    answer,
    reason: reasonOf(found, { test: sentenceCase(test), above, within, words }),
    n,
    estimate:
      difference === undefined || lower === undefined || upper === undefined
        ? null
        : {
            value: difference,
            lower,
            upper,
            confidence: 2 * confidence - 1,
            unit: unitOf(condition.outcome),
          },
    table: {
      mean: found.mean ?? null,
      extra: difference ?? null,
      lower: lower ?? null,
      upper: upper ?? null,
      netExtra: null,
      netUpper: null,
      se: found.se ?? null,
      df: found.df ?? null,
    },
    cautions:
      answer === 'does-not-hold' || shown || difference === undefined
        ? []
        : [
            `${sentenceCase(plain(condition.outcome))} within ${within} not shown: ${upper === undefined ? 'the spread of the difference is not known' : `the difference may be as much as ${figure(upper, 1)} (${percent(confidence)})`}.`,
          ],
    more: answer === 'not-settled' && n < fewestSessions ? fewestSessions - n : null,
  }
}

function reasonOf(
  { why, n, difference }: NextLevel,
  {
    test,
    above,
    within,
    words,
  }: { test: string; above: string; within: string; words: { one: string; many: string } },
): string {
  if (why === 'nothing') return `${test}: no ${words.one} has it both here and at ${above}.`
  if (why === 'blank') return `${test}: not recorded in every ${words.one}, here or at ${above}.`
  if (why === 'few') return `${test}: only ${n} of at least three ${words.many} have it here and at ${above}.`
  const far = `${figure(Math.abs(difference ?? 0), 1)} ${(difference ?? 0) < 0 ? 'under' : 'over'} that of ${above}`
  return `${test} is on average ${far}; ${within} is allowed.`
}

const plain = (outcome: string): string => (outcome === 'lightness' ? 'lightness' : outcome)
const unitOf = (outcome: string): string => (outcome === 'lightness' ? 'L*' : '')

function common({ condition, trial }: Asked) {
  return {
    condition,
    units: sessionWords(trial),
    limit: null,
    figures: {},
    method: [
      'Described, not tested: the means of sessions that hold both levels are compared. The limits of their difference, from differences within sessions (Student’s t), stand beside.',
    ],
  }
}
