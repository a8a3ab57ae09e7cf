import type { Lab } from '../colour/lab.ts'

export type ShiftLevel = {
  readonly key: string
  /** “35 min” */
  readonly label: string
  /** “35”: under the lightness, and in the inset. */
  readonly short: string
  readonly chosen: boolean
  /** Means over the skeins of the level. */
  readonly before: Lab
  readonly after: Lab
  readonly skeins: readonly { readonly code: string; readonly before: Lab; readonly after: Lab }[]
}

/** Which way the colour went: arrows from before to after on the plane of a* and b*, lightness beside. */
export type ShiftPicture = {
  readonly title: string
  readonly says: string
  readonly finding: string
  /** What the levels are, for the head of the table: “Steam”. */
  readonly axisLabel: string
  readonly levels: readonly ShiftLevel[]
}
