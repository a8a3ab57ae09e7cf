import type { Verdict } from '#api/science/verdicts/verdict.ts'
import type { Condition } from './condition.ts'

/** An estimate with the limits that decide: both ends as they are printed everywhere. */
export type Estimate = {
  readonly value: number
  readonly lower: number
  readonly upper: number
  /** Two-sided: 0.9 where the one-sided limits are at 95 %. */
  readonly confidence: number
  readonly unit: string
}

/** The same as it was read, and with the measuring error taken off: for the table under the fold. */
export type RawAndNet = {
  readonly mean: number | null
  readonly extra: number | null
  readonly lower: number | null
  readonly upper: number | null
  readonly netExtra: number | null
  readonly netUpper: number | null
  readonly se: number | null
  readonly df: number | null
}

/** How a limit stood: every session’s, lot’s or skein’s value, and the worst of them. */
export type LimitFound = {
  readonly worst: number | null
  readonly worstText: string
  /** Where the worst stood: “lot B”, “session 3”. */
  readonly worstAt: string | null
  readonly all: readonly string[]
  readonly met: boolean
  readonly broken: boolean
  readonly missing: number
}

/** What one condition found of one level (arm, lot, batch, colour), or of the whole stratum (`levelId: null`). */
export type Answer = {
  readonly condition: Condition
  readonly levelId: string | null
  readonly answer: Verdict
  /** One plain sentence: why this answer. */
  readonly reason: string
  /** How many independent units say so, and what they are. */
  readonly n: number
  readonly units: { readonly one: string; readonly many: string }
  readonly estimate: Estimate | null
  readonly table: RawAndNet | null
  /** Of light: where the colour stands, means over its cards: “blue wool 1-2”. */
  readonly placed?: string | undefined
  readonly limit: LimitFound | null
  /** Beside the answer: what a reader must know. Each a whole sentence. */
  readonly cautions: readonly string[]
  /** How it was worked out, a sentence each. */
  readonly method: readonly string[]
  /** Further figures under their names, unrounded: p of the sign flip, the blue wools of a bracket, the next batch. */
  readonly figures: Readonly<Record<string, number | null>>
  /** About how many more units would settle it; null where that cannot be said or is not wanted. */
  readonly more: number | null
}
