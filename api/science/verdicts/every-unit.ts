import { ladderOfLevels } from './ladder-of-levels.ts'
import { fewestBlocks } from './least-level-that-holds.ts'
import type { Level } from './level-rows.ts'
import { pairedExtraLoss } from './paired-extra-loss.ts'
import { resultsAt, resultsByLevel } from './results-by-level.ts'
import type { Verdict } from './verdict.ts'

/** One jar: how much acid it got, what was left in its bath, how light its skein came out. */
export type AcidRow = {
  readonly level: Level
  readonly session: string | number
  /** Dye left in the bath, % of the start; undefined: not recorded. */
  readonly left: number | undefined
  readonly lightness: number | undefined
}

export type AcidStep = {
  readonly level: Level
  readonly sessions: number
  readonly mostLeft: number | undefined
  readonly lightness: number | undefined
  /** Mean L* less that of the next level, and its one-sided upper 95 % limit: shown, not judged. None at the top level. */
  readonly toNext: { readonly mean: number; readonly upper: number | undefined } | undefined
  readonly answer: Verdict
  readonly holds: boolean
  readonly why: string
}

export type LeastAcid = {
  readonly verdict: Verdict
  /** Undefined when it was not reached: the most acid tried is not enough, or its figures are not in. */
  readonly least: Level | undefined
  readonly notReached: boolean
  /** From the most acid downwards. */
  readonly steps: readonly AcidStep[]
  readonly cautions: readonly string[]
}

/**
 * The least acid that is enough: dye left in the bath within its limit in every session, and a mean L* within `lighter` of
 * the next level's. A rule of the trade, described and not tested: the limit of the L* difference stands beside it.
 * We step down from the most acid; when that is not enough itself the answer is "not reached", never a number beyond it.
 *
 * @param rows  Of one base.
 *
 * @example
 * const jars = (level, left, L) => left.map((it, i) => ({ level, session: i, left: it, lightness: L[i] }))
 * leastAcid([...jars(15, [12.5, 12.5, 12.5], [39.6, 38.1, 38.8]), ...jars(30, [6, 3, 3], [36, 35.7, 34.6]), ...jars(60, [3, 3, 3], [34.7, 35, 34.9])]) // { verdict: 'holds', least: 30, notReached: false }
 */
export function leastAcid(
  rows: readonly AcidRow[],
  {
    leftAtMost = 6,
    lighter = 1,
    order,
  }: { readonly leftAtMost?: number; readonly lighter?: number; readonly order?: readonly Level[] } = {},
): LeastAcid {
  const asLevels = rows.map((row) => ({ level: row.level, block: row.session, value: row.lightness }))
  const ladder = [...ladderOfLevels(asLevels, { order })].reverse()
  const lightness = resultsByLevel(asLevels)
  let allHold = true
  const steps = ladder.map((level, place): AcidStep => {
    const own = rows.filter((row) => String(row.level) === String(level))
    const above = ladder[place - 1]
    const toNext = above === undefined ? undefined : differenceToNext(lightness, level, above)
    const left = own.flatMap((row) => (row.left === undefined ? [] : [row.left]))
    const judged = answerOf(own, { leftAtMost, lighter, toNext, isTop: above === undefined })
    allHold &&= judged.answer === 'holds'
    return {
      level,
      sessions: new Set(own.map((row) => row.session)).size,
      mostLeft: left.length === 0 ? undefined : Math.max(...left),
      lightness: meanOf([...resultsAt(lightness, level).blocks.values()]),
      toNext,
      ...judged,
      holds: allHold,
    }
  })
  const least = steps.filter((step) => step.holds).at(-1)
  const top = steps[0]
  return {
    verdict: least === undefined ? (top?.answer ?? 'not-settled') : 'holds',
    least: least?.level,
    notReached: top?.answer === 'does-not-hold',
    steps,
    cautions: cautionsOf(least, top, lighter),
  }
}

function answerOf(
  rows: readonly AcidRow[],
  {
    leftAtMost,
    lighter,
    toNext,
    isTop,
  }: { leftAtMost: number; lighter: number; toNext: AcidStep['toNext']; isTop: boolean },
): { answer: Verdict; why: string } {
  if (rows.some((row) => row.left !== undefined && row.left > leftAtMost))
    return { answer: 'does-not-hold', why: `More than ${leftAtMost} % was left in at least one session.` }
  if (toNext !== undefined && Math.abs(toNext.mean) > lighter)
    return { answer: 'does-not-hold', why: `Its mean L* is more than ${lighter} from the next level's.` }
  if (new Set(rows.map((row) => row.session)).size < fewestBlocks)
    return { answer: 'not-settled', why: 'Fewer than three sessions never make a claim.' }
  if (rows.some((row) => row.left === undefined))
    return { answer: 'not-settled', why: 'What was left in the bath was not recorded in every session.' }
  if (!isTop && toNext === undefined)
    return { answer: 'not-settled', why: 'No session has an L* of this level and the next.' }
  return { answer: 'holds', why: 'Within both limits.' }
}

function differenceToNext(
  lightness: ReturnType<typeof resultsByLevel>,
  level: Level,
  above: Level,
): AcidStep['toNext'] {
  const [own, next] = [resultsAt(lightness, level), resultsAt(lightness, above)]
  const [mean, other] = [meanOf([...own.blocks.values()]), meanOf([...next.blocks.values()])]
  if (mean === undefined || other === undefined) return undefined
  return { mean: mean - other, upper: pairedExtraLoss(own, next, { confidence: 0.95 }).upper }
}

function cautionsOf(least: AcidStep | undefined, top: AcidStep | undefined, lighter: number): string[] {
  if (least === undefined)
    return top?.answer === 'does-not-hold'
      ? [`Not reached: even ${top.level} is not enough. Nothing is said about more.`]
      : []
  const upper = least.toNext?.upper
  if (upper === undefined || upper < lighter) return []
  return [
    `L* is compared by its means, as the rule says. The upper 95 % limit of the difference is ${upper.toFixed(1)}, so “within ${lighter.toFixed(1)}” is not shown.`,
  ]
}

function meanOf(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, it) => sum + it, 0) / values.length
}
