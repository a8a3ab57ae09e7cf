import type { Verdict } from './verdict.ts'

/** What was tried: minutes of steam, millilitres of vinegar, or a name where the factor is no number. */
export type Level = string | number

/** One row of a ladder: what a skein (or one of its vessels) was given, and how it came out. */
export type LevelRow = {
  readonly level: Level
  /** The session that holds it. Rows have blocks all of them, or none. */
  readonly block?: string | number | undefined
  /** The vessel within the block; rows of one level, block and vessel are averaged. */
  readonly vessel?: string | number | undefined
  /** The result. Undefined is "no result": such a row is counted and not used. */
  readonly value: number | undefined
  /** Results that have limits of their own: staining, rinses, felting. Undefined is "not recorded". */
  readonly side?: Readonly<Record<string, number | undefined>> | undefined
}

/**
 * A limit on a side result. `low` (the usual): what goes wrong when the level is too low, such as staining.
 * `high`: what goes wrong when it is too high, such as felting; it closes the window from above and never stops the steps.
 */
export type SideLimit = {
  readonly side: string
  readonly atLeast?: number | undefined
  readonly atMost?: number | undefined
  readonly end?: 'low' | 'high' | undefined
}

/** How a level is compared with the reference. */
export type LadderMethod = 'paired' | 'model' | 'pooled'

export type Direction = 'smaller-is-better' | 'larger-is-better'

export type LadderRule = {
  /** Largest extra loss that is still accepted, in the unit of the values; more than 0. */
  readonly margin: number
  /** One-sided, between 0 and 1; 0.95 unless given. */
  readonly confidence?: number | undefined
  /** Levels from least to most. Numbers order themselves; text needs it. */
  readonly order?: readonly Level[] | undefined
  /** What the others are held against; the highest level unless named. */
  readonly reference?: Level | undefined
  readonly direction?: Direction | undefined
  readonly method?: LadderMethod | undefined
  /** Root mean square ΔE of unchanged things read alike. With it a level must hold net of noise too. */
  readonly noiseRms?: number | undefined
  /** SD of the differences (pooled: of single units) that was expected; used when fewer than 4 blocks tell. */
  readonly sdPlanned?: number | undefined
  readonly limits?: readonly SideLimit[] | undefined
}

/** A level's extra loss over the reference. What cannot be worked out is undefined, and `unavailable` says why. */
export type ExtraLoss = {
  /** Blocks that hold both levels; pooled: units of the level. */
  readonly n: number
  readonly mean: number | undefined
  readonly extra: number | undefined
  readonly se: number | undefined
  readonly df: number | undefined
  /** One-sided limits; together the ends of the two-sided interval at 2 × confidence − 1. */
  readonly lower: number | undefined
  readonly upper: number | undefined
  /** SD of the differences (pooled: the common SD of units), and its degrees of freedom. */
  readonly sd: number | undefined
  readonly noSpread: boolean
  readonly unavailable?: string
}

/** How a side limit stands at one level, over every row of it. */
export type SideResult = {
  readonly side: string
  readonly end: 'low' | 'high'
  /** The value nearest to breaking the limit, or furthest over it. */
  readonly worst: number | undefined
  /** Some value was recorded and none breaks the limit. */
  readonly met: boolean
  /** Some recorded value breaks the limit. */
  readonly broken: boolean
  /** Rows with a result in which this one was not recorded. */
  readonly missing: number
}

export type LadderStep = ExtraLoss & {
  readonly level: Level
  /** The same, after the noise has been taken off each value; only where the rule knows the noise. */
  readonly net?: ExtraLoss
  readonly limits: readonly SideResult[]
  readonly answer: Verdict
  /** This step and all above it hold. */
  readonly holds: boolean
}

/** A whole number, or the reason why there is none. */
export type Needed = { readonly blocks: number } | { readonly unavailable: string }

export type LadderWindow = { readonly from: Level; readonly to: Level } | { readonly unavailable: string }

export type LadderVerdict = {
  readonly verdict: Verdict
  /** The lowest level that holds; undefined when none below the reference does. */
  readonly least: Level | undefined
  readonly reference: Level
  readonly referenceMean: number | undefined
  readonly referenceLimits: readonly SideResult[]
  readonly window: LadderWindow
  /** From the level next to the reference downwards, all of them. */
  readonly steps: readonly LadderStep[]
  readonly blocksNeeded: Needed
  readonly method: LadderMethod
  readonly confidence: number
  readonly cautions: readonly string[]
}
