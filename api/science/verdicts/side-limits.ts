import type { LevelRow, SideLimit, SideResult } from './level-rows.ts'

/**
 * How the rows of one level stand against the limits on side results. A limit counts by its worst row: one session
 * that breaks it is enough. A row with a result but without the side result is "missing": not met, not broken.
 *
 * @example
 * sideResults([{ level: 20, value: 2, side: { stain: 3 } }, { level: 20, value: 2 }], [{ side: 'stain', atLeast: 4 }]) // [{ side: 'stain', end: 'low', worst: 3, met: false, broken: true, missing: 1 }]
 */
export function sideResults(rows: readonly LevelRow[], limits: readonly SideLimit[]): SideResult[] {
  return limits.map((limit) => {
    const seen: number[] = []
    let missing = 0
    for (const row of rows) {
      const value = row.side?.[limit.side]
      if (value !== undefined) seen.push(value)
      else if (row.value !== undefined) missing++
    }
    const worst = worstOf(seen, limit)
    const broken = worst !== undefined && excess(worst, limit) > 0
    return {
      side: limit.side,
      end: limit.end ?? 'low',
      worst,
      met: worst !== undefined && !broken,
      broken,
      missing,
    }
  })
}

/** How far a value is over its limit; below 0 when within. */
function excess(value: number, { atLeast, atMost }: SideLimit): number {
  return Math.max(
    atLeast === undefined ? Number.NEGATIVE_INFINITY : atLeast - value,
    atMost === undefined ? Number.NEGATIVE_INFINITY : value - atMost,
  )
}

function worstOf(values: readonly number[], limit: SideLimit): number | undefined {
  let worst: number | undefined
  for (const value of values)
    if (worst === undefined || excess(value, limit) > excess(worst, limit)) worst = value
  return worst
}
