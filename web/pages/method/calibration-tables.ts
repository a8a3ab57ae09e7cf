import { perCent } from '#web/form/number-words.ts'
import type { PlainTableData } from '#web/parts/plain-table.tsx'

/** Sessions, noise floor in margins, then the shares that hold: by the rule, with four twins, raw alone, looked at every session. */
export type HoldsRow = readonly number[]

export type CoverageRow = {
  readonly sessions: number
  readonly byPots: number
  readonly bySkeins: number
}

/**
 * A noise floor, as a part of the margin.
 *
 * @example
 * [0, 0.2, 0.3333, 0.5].map(floorInWords) // ['none', 'a fifth of the margin', 'a third of the margin', 'half the margin']
 */
export function floorInWords(floor: number): string {
  if (floor === 0) return 'none'
  const named = [
    [1 / 5, 'a fifth of the margin'],
    [1 / 3, 'a third of the margin'],
    [1 / 2, 'half the margin'],
  ] as const
  return named.find(([part]) => Math.abs(part - floor) < 0.001)?.[1] ?? `${floor} of the margin`
}

const shares = ['By the rule', 'noise from 4 twins', 'raw alone', 'looked at every session'] as const

/** How often levels hold, by noise floor and sessions. */
export function holdsTable(
  rows: readonly HoldsRow[],
  { ruleOnly = false }: { readonly ruleOnly?: boolean } = {},
): PlainTableData {
  const shown = ruleOnly ? shares.slice(0, 1) : shares
  return {
    head: [
      { words: 'Noise floor' },
      { words: 'Sessions', figure: true },
      ...shown.map((words) => ({ words, figure: true })),
    ],
    rows: rows.map(([sessions = 0, floor = 0, ...held]) => ({
      key: `${sessions} ${floor}`,
      cells: [
        floorInWords(floor),
        String(sessions),
        ...held.slice(0, shown.length).map((share) => perCent(share, 1)),
      ],
    })),
  }
}

export function coverageTable(rows: readonly CoverageRow[]): PlainTableData {
  return {
    head: [
      { words: 'Sessions' },
      { words: '95 % intervals by pots', figure: true },
      { words: 'by skeins', figure: true },
    ],
    rows: rows.map(({ sessions, byPots, bySkeins }) => ({
      key: String(sessions),
      cells: [String(sessions), perCent(byPots, 1), perCent(bySkeins, 1)],
    })),
  }
}
