import type { LadderWindow, Level, SideResult } from './level-rows.ts'

/**
 * The levels that are neither too little nor too much: from the least that holds up to the highest from which
 * downwards every high-end limit (felting) is met. A high-end result that was not recorded closes it too.
 *
 * @param ladder  Least first, each level with its side results.
 *
 * @example
 * const felting = (met) => [{ side: 'felt', end: 'high', worst: 2, met, broken: !met, missing: 0 }]
 * windowOfLevels([{ level: 20, limits: felting(true) }, { level: 35, limits: felting(true) }, { level: 50, limits: felting(false) }], 20) // { from: 20, to: 35 }
 */
export function windowOfLevels(
  ladder: readonly { readonly level: Level; readonly limits: readonly SideResult[] }[],
  least: Level | undefined,
): LadderWindow {
  if (least === undefined) return { unavailable: 'No level below the reference holds.' }
  const closed = ladder.findIndex(({ limits }) =>
    limits.some((it) => it.end === 'high' && (!it.met || it.missing > 0)),
  )
  const from = ladder.findIndex(({ level }) => level === least)
  const to = (closed < 0 ? ladder.length : closed) - 1
  const top = ladder[to]
  if (top === undefined || to < from)
    return { unavailable: 'The window is empty: the levels that hold go over a limit of the high end.' }
  return { from: least, to: top.level }
}
