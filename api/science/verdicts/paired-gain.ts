import { holm } from '../statistics/holm.ts'
import { studentT, studentTQuantile } from '../statistics/student-t.ts'
import { allEqual } from './extra-loss.ts'
import { fewestBlocks } from './least-level-that-holds.ts'
import type { Direction, Level, LevelRow, SideLimit, SideResult } from './level-rows.ts'
import { resultsAt, resultsByLevel } from './results-by-level.ts'
import { sideResults } from './side-limits.ts'
import type { Verdict } from './verdict.ts'

/** What one treatment brings over the control, within blocks. Differences are treatment − control, as measured. */
export type Gain = {
  readonly level: Level
  /** Blocks that hold both. */
  readonly n: number
  readonly difference: number | undefined
  readonly se: number | undefined
  readonly df: number | undefined
  readonly lower: number | undefined
  readonly upper: number | undefined
  /** Two-sided; `pAdjusted` by Holm over all treatments. */
  readonly p: number | undefined
  readonly pAdjusted: number | undefined
  readonly limits: readonly SideResult[]
  readonly verdict: Verdict
  readonly why: string
}

/**
 * Is a treatment better than the control, bench by bench or skein by skein? It holds when the whole interval of the paired
 * difference lies on the better side of `worth`, still so after Holm's correction where several treatments share one control, and
 * every side limit is met in every block. It does not hold when a limit is broken or the whole interval lies on the other side.
 *
 * @param control    The usual way, or plain water.
 * @param worth      The least gain worth having, 0 or more; 0 unless given.
 * @param level      Of the two-sided interval; 0.95 unless given.
 * @throws RangeError when the control is none of the levels.
 *
 * @example
 * const bench = (n, start, doses) => [{ level: 'all at start', block: n, value: start }, { level: 'two doses', block: n, value: doses }]
 * pairedGain([...bench(1, 8, 15), ...bench(2, 9, 17), ...bench(3, 7, 15)], { control: 'all at start', direction: 'larger-is-better' }) // [{ level: 'two doses', n: 3, difference: 7.667, lower: 6.232, upper: 9.101, verdict: 'holds' }]
 */
export function pairedGain(
  rows: readonly LevelRow[],
  {
    control,
    direction = 'larger-is-better',
    worth = 0,
    level = 0.95,
    limits = [],
  }: {
    readonly control: Level
    readonly direction?: Direction
    readonly worth?: number
    readonly level?: number
    readonly limits?: readonly SideLimit[]
  },
): Gain[] {
  const results = resultsByLevel(rows)
  const levels = [...new Map(rows.map((row) => [String(row.level), row.level])).values()]
  if (!levels.some((it) => String(it) === String(control)))
    throw new RangeError(`The control “${control}” is none of the treatments.`)
  const against = resultsAt(results, control).blocks
  const sign = direction === 'larger-is-better' ? 1 : -1
  const found = levels
    .filter((it) => String(it) !== String(control))
    .map((it) => ({ level: it, ...differenceWithin(resultsAt(results, it).blocks, against, level) }))
  const adjusted = holmOfKnown(found.map((it) => it.p))
  return found.map((it, place) => {
    const sides = sideResults(
      rows.filter((row) => String(row.level) === String(it.level)),
      limits,
    )
    const gain = { ...it, pAdjusted: adjusted[place], limits: sides }
    return { ...gain, ...verdictOf(gain, { sign, worth, level }) }
  })
}

type Difference = Pick<Gain, 'n' | 'difference' | 'se' | 'df' | 'lower' | 'upper' | 'p'> & {
  readonly flat: boolean
}

function differenceWithin(
  own: ReadonlyMap<string, number>,
  control: ReadonlyMap<string, number>,
  level: number,
): Difference {
  const differences: number[] = []
  let largest = 0
  for (const [block, value] of own) {
    const other = control.get(block)
    if (other === undefined) continue
    differences.push(value - other)
    largest = Math.max(largest, Math.abs(value), Math.abs(other))
  }
  const n = differences.length
  const none = { n, se: undefined, df: undefined, lower: undefined, upper: undefined, p: undefined }
  if (n === 0) return { ...none, difference: undefined, flat: false }
  const difference = differences.reduce((sum, it) => sum + it, 0) / n
  const flat = n > 1 && allEqual(differences, largest)
  if (n === 1 || flat) return { ...none, difference, flat }
  const se = Math.sqrt(differences.reduce((sum, it) => sum + (it - difference) ** 2, 0) / (n - 1) / n)
  const half = studentTQuantile(1 - (1 - level) / 2, n - 1) * se
  const p = 2 * studentT(Math.abs(difference / se), n - 1).upper
  return { n, difference, se, df: n - 1, lower: difference - half, upper: difference + half, p, flat }
}

function verdictOf(
  gain: Difference & Pick<Gain, 'pAdjusted' | 'limits'>,
  { sign, worth, level }: { sign: 1 | -1; worth: number; level: number },
): { verdict: Verdict; why: string } {
  const { lower, upper, limits } = gain
  if (limits.some((it) => it.broken))
    return { verdict: 'does-not-hold', why: 'A limit is broken in at least one block.' }
  if (gain.flat)
    return { verdict: 'not-settled', why: 'All differences are equal: were values copied or rounded?' }
  if (lower === undefined || upper === undefined)
    return { verdict: 'not-settled', why: 'Too few blocks hold both.' }
  const [least, most] = sign === 1 ? [lower, upper] : [-upper, -lower]
  if (most <= worth)
    return { verdict: 'does-not-hold', why: 'The whole interval is below a gain worth having.' }
  if (gain.n < fewestBlocks)
    return { verdict: 'not-settled', why: 'Fewer than three blocks never make a claim.' }
  if (limits.some((it) => !it.met || it.missing > 0))
    return { verdict: 'not-settled', why: 'A side result was not recorded in every block.' }
  if (least <= worth)
    return { verdict: 'not-settled', why: 'The interval reaches over a gain that is not worth having.' }
  if (gain.pAdjusted !== undefined && gain.pAdjusted >= 1 - level)
    return {
      verdict: 'not-settled',
      why: 'Several treatments were tried, and corrected for that it is not shown.',
    }
  return { verdict: 'holds', why: 'The whole interval is a gain worth having.' }
}

/** Holm's correction over those that have a p. */
function holmOfKnown(ps: readonly (number | undefined)[]): (number | undefined)[] {
  const adjusted = holm(ps.filter((p) => p !== undefined))
  return ps.map((p) => (p === undefined ? undefined : adjusted.shift()))
}
