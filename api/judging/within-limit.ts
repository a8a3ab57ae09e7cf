import type { Counted } from '#api/contract/patterns.ts'
import { judgedBy } from '#api/contract/question.ts'
import { failingShareUpTo } from '#api/science/statistics/failing-share.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { counted, listed, sentenceCase } from '#api/words/numbers.ts'
import type { Answer, LimitFound } from './answer.ts'
import type { Asked, Engine } from './asked.ts'
import { limitInWords, testInWords, valueInWords } from './limit-in-words.ts'
import { type LimitUnit, limitUnits, limitUnitWords } from './limit-units.ts'
import { judgeNextLevel } from './next-level.ts'

/** Fewer sessions or lots than this say nothing of the next one. */
const fewestUnits = 3

/**
 * Is every session, lot or unit of each level within the condition’s own limit? Each counts by itself: no mean makes up
 * for one that is outside. A mean that is described against the next level’s is handed on.
 */
export const judgeWithinLimit: Engine = (asked) =>
  asked.condition.against === 'next level' ? judgeNextLevel(asked) : asked.levels.map(ofLevel(asked))

const ofLevel =
  (asked: Asked) =>
  (level: Asked['levels'][number]): Answer => {
    const { condition } = asked
    const units = limitUnits(asked, level)
    const words = limitUnitWords(asked)
    const found = withinLimit(units, condition)
    const limit = limitFound(found, units, condition.outcome)
    const lost = units.filter((unit) => unit.lost !== undefined)
    const chance = judgedBy(condition.outcome) === 'eye' ? passAtLimit(found.recorded) : undefined
    return {
      condition,
      levelId: level.id,
      answer: found.answer,
      reason: reasonOf(found, { condition, words, limit }),
      n: found.n,
      units: words,
      estimate: null,
      table: null,
      limit,
      cautions: [...lossesOf(lost, units.length, words), ...fewOf(found, words)],
      method: [
        `Each of the ${words.many} is judged by the limit, by its worst grade or value; no mean is taken.`,
        'The share that may fail is the exact one-sided 95\u00a0% limit (Clopper and Pearson).',
        ...(chance === undefined
          ? []
          : [
              'Of a shade that lies exactly at the limit half of all single gradings are taken to meet it. Of two gradings the worse counts, of three the middle one.',
            ]),
      ],
      figures: {
        failing: found.n === 0 ? null : found.failing.length,
        failingUpTo: found.failingUpTo ?? null,
        passAtLimit: chance ?? null,
      },
      more: found.answer === 'not-settled' && found.n < fewestUnits ? fewestUnits - found.n : null,
    }
  }

/** What the units of a level come to under a limit. */
export type WithinLimit = {
  readonly answer: Verdict
  readonly n: number
  readonly recorded: readonly LimitUnit[]
  readonly failing: readonly LimitUnit[]
  readonly missing: readonly LimitUnit[]
  readonly worst: LimitUnit | undefined
  /** Of units to come, up to this share may fail: the exact one-sided 95 % limit; 0–1. */
  readonly failingUpTo: number | undefined
  readonly without: 'limit' | undefined
}

/**
 * n of n: holds when three or more units are recorded, none is blank and all meet the limit; one outside it is enough
 * for "does not hold". A unit lost before it was graded is not counted; a blank one never makes a "holds".
 *
 * @param limit  `atLeast`, `atMost` or both, in the outcome’s own steps; a value that equals its limit meets it.
 *
 * @example
 * const lot = (name, value) => ({ name, value, gradings: 2, lost: undefined })
 * withinLimit([lot('lot A', 5), lot('lot B', 4), lot('lot C', 4.5)], { atLeast: 4 }) // { answer: 'holds', n: 3, failingUpTo: 0.632, worst: { name: 'lot B' } }
 * @example
 * withinLimit([{ name: 'lot A', value: 3.5, gradings: 2, lost: undefined }], { atLeast: 4 }).answer // 'does-not-hold'
 */
export function withinLimit(
  units: readonly LimitUnit[],
  { atLeast, atMost }: { readonly atLeast?: number | undefined; readonly atMost?: number | undefined },
): WithinLimit {
  const kept = units.filter((unit) => unit.lost === undefined)
  const recorded = kept.filter((unit) => unit.value !== undefined)
  const missing = kept.filter((unit) => unit.value === undefined)
  const beyond = ({ value = 0 }: LimitUnit) =>
    Math.max(
      atLeast === undefined ? Number.NEGATIVE_INFINITY : atLeast - value,
      atMost === undefined ? Number.NEGATIVE_INFINITY : value - atMost,
    )
  const failing = recorded.filter((unit) => beyond(unit) > 0)
  const worst = recorded.reduce<LimitUnit | undefined>(
    (one, other) => (one === undefined || beyond(other) > beyond(one) ? other : one),
    undefined,
  )
  const n = recorded.length
  const common = { n, recorded, failing, missing, worst }
  if (atLeast === undefined && atMost === undefined)
    return { ...common, failing: [], answer: 'not-settled', failingUpTo: undefined, without: 'limit' }
  const met = n >= fewestUnits && missing.length === 0
  return {
    ...common,
    answer: failing.length > 0 ? 'does-not-hold' : met ? 'holds' : 'not-settled',
    failingUpTo: n === 0 ? undefined : failingShareUpTo(failing.length, n),
    without: undefined,
  }
}

/**
 * How often units that lie exactly at the limit would all pass by eye: half of single gradings meet it, and the median
 * of several gradings, halves down, when enough of them do. Undefined where a value was measured.
 *
 * @example
 * passAtLimit([{ gradings: 1 }, { gradings: 1 }, { gradings: 1 }]) // 0.125
 * @example
 * [passAtLimit([{ gradings: 2 }]), passAtLimit([{ gradings: 3 }]), passAtLimit([{ gradings: 0 }])] // [0.25, 0.5, undefined]
 */
export function passAtLimit(units: readonly Pick<LimitUnit, 'gradings'>[]): number | undefined {
  if (units.length === 0 || units.some(({ gradings }) => gradings < 1)) return undefined
  return units.reduce((chance, { gradings }) => chance * medianMeets(gradings), 1)
}

/** The chance that the lower median of so many gradings meets the limit, when each does in half of all cases. */
function medianMeets(gradings: number): number {
  const wanted = Math.floor(gradings / 2) + 1
  let [ways, sum] = [1, 0]
  for (let meeting = 0; meeting <= gradings; meeting++) {
    if (meeting >= wanted) sum += ways
    ways = (ways * (gradings - meeting)) / (meeting + 1)
  }
  return sum / 2 ** gradings
}

function limitFound(found: WithinLimit, units: readonly LimitUnit[], outcome: string): LimitFound {
  const said = ({ value, lost }: LimitUnit) =>
    value !== undefined ? valueInWords(outcome, value) : lost === undefined ? 'not recorded' : 'lost'
  return {
    worst: found.worst?.value ?? null,
    worstText: found.worst ? said(found.worst) : 'not recorded',
    worstAt: found.worst?.name ?? null,
    all: units.map((unit) => `${unit.name} ${said(unit)}`),
    met: found.without === undefined && found.n > 0 && found.failing.length + found.missing.length === 0,
    broken: found.failing.length > 0,
    missing: found.missing.length,
  }
}

function reasonOf(
  found: WithinLimit,
  { condition, words, limit }: { condition: Asked['condition']; words: Counted; limit: LimitFound },
): string {
  const test = sentenceCase(testInWords(condition))
  const names = (units: readonly LimitUnit[]) => listed(units.map(({ name }) => name))
  if (found.without === 'limit') return `${test}: the rule names no limit for it.`
  const within = limitInWords(condition)
  if (found.failing.length > 0) {
    const more = found.failing.length === 1 ? '' : ` (${found.failing.length} of ${found.n} fail)`
    return `${test}: ${limit.worstText} in ${limit.worstAt}; the limit is ${within}${more}.`
  }
  if (found.n === 0) return `${test}: nothing was recorded.`
  if (found.missing.length > 0) return `${test}: not recorded in ${names(found.missing)}.`
  if (found.answer !== 'holds')
    return `${test}: ${within} in ${counted(found.n, words)}; it takes three ${words.many} to say so.`
  const worst = limit.worstText === within ? '' : ` (worst: ${limit.worstText}, ${limit.worstAt})`
  return `${test}: ${within} in all ${found.n} ${words.many}${worst}.`
}

function lossesOf(lost: readonly LimitUnit[], all: number, words: Counted): string[] {
  if (lost.length === 0) return []
  const named = lost.map(({ name, lost: why }) => `${name} (${why})`)
  return [
    `${all - lost.length} of ${counted(all, words)}: ${listed(named)} ${lost.length === 1 ? 'was' : 'were'} lost before this was read.`,
  ]
}

function fewOf({ answer, n, failingUpTo }: WithinLimit, words: Counted): string[] {
  if (answer !== 'holds' || failingUpTo === undefined) return []
  return [
    `No failure in ${n} ${words.many} still leaves up to ${Math.round(100 * failingUpTo)}\u00a0% that may fail (95\u00a0%).`,
  ]
}
