import type { Level } from './level-rows.ts'

/** Where and by whom a skein was worked, as far as it is recorded. */
export type WorkedRow = {
  readonly level: Level
  readonly equipment?: string | undefined
  readonly place?: string | undefined
  /** Rank in the order of working, from 1. */
  readonly drawnOrder?: number | undefined
  readonly date?: string | undefined
  readonly person?: string | undefined
}

export type Nuisance = 'equipment' | 'place' | 'drawnOrder' | 'date' | 'person'

const nuisances: readonly (readonly [Nuisance, string])[] = [
  ['equipment', 'piece of equipment'],
  ['place', 'place'],
  ['drawnOrder', 'turn in the order of working'],
  ['date', 'date'],
  ['person', 'pair of hands'],
]

/** A level that never left one piece of equipment, place, turn, date or person, while others were elsewhere. */
export type TiedLevels = { readonly by: Nuisance; readonly words: string; readonly levels: readonly Level[] }

/**
 * Levels whose every skein had the same pot, place, turn, date or person, though not the whole trial did: what comes
 * from the pot cannot be told from the level. One skein alone is not counted against its level.
 *
 * @example
 * const row = (level, session, place) => ({ level, session, vessel: session + level, skein: session + level, place, value: 1 })
 * alwaysTheSame([row(20, 'Mon', '1'), row(20, 'Tue', '1'), row(75, 'Mon', '2'), row(75, 'Tue', '3')]) // [{ by: 'place', levels: [20] }]
 */
export function alwaysTheSame(rows: readonly WorkedRow[]): TiedLevels[] {
  const tied: TiedLevels[] = []
  for (const [by, words] of nuisances) {
    const known = rows.filter((row) => row[by] !== undefined)
    if (new Set(known.map((row) => row[by])).size < 2) continue
    const levels = [...new Map(known.map((row) => [String(row.level), row.level])).values()].filter(
      (level) => {
        const own = known.filter((row) => String(row.level) === String(level))
        return own.length > 1 && new Set(own.map((row) => row[by])).size === 1
      },
    )
    if (levels.length > 0) tied.push({ by, words, levels })
  }
  return tied
}
