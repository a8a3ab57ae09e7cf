import type { Lab } from '../colour/lab.ts'

export type WearPoint = {
  /** How many washes, weeks, hours. */
  readonly at: number
  readonly mean: number
  readonly lower?: number | null
  readonly upper?: number | null
}

export type WearGroup = {
  readonly key: string
  /** “35 min” */
  readonly label: string
  /** Used where groups with the same end share a label: “50” of “50 and 75, 1.0”. */
  readonly short?: string
  readonly chosen: boolean
  /** A colour of yarn, shown as a chip on its own grey beside the name. */
  readonly colour?: Lab
  readonly points: readonly WearPoint[]
}

/** Loss as washes, weeks or hours add up: a line for each group, its interval at the last reading. */
export type WearPicture = {
  readonly title: string
  readonly says: string
  readonly finding: string
  readonly axis: { readonly label: string; readonly unit: string }
  readonly outcomeLabel: string
  readonly decimals?: { readonly picture: number; readonly table: number }
  /**
   * Where the axis has names: every step at which a reading could have been taken. A line that passes over one of them
   * without a reading is dotted there.
   */
  readonly ticks: readonly { readonly at: number; readonly label: string; readonly short?: string }[]
  readonly groups: readonly WearGroup[]
  /** Blue wools on the same cards, each by its number. */
  readonly wools?: readonly { readonly number: string; readonly points: readonly WearPoint[] }[]
  readonly noise?: { readonly upTo: number; readonly label: string }
}
