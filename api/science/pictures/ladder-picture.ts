/** One skein at a level: its code, its session and the value of the outcome. */
export type LadderSkein = {
  readonly code: string
  readonly session: string
  readonly value: number
  /** Said with it on pointing: “grade 3-4”. */
  readonly note?: string
}

export type LadderLevel = {
  readonly key: string
  /** “35 min” */
  readonly label: string
  /** Where labels must be short: “35”. */
  readonly short?: string
  /** Where it stands on the axis: the level itself when numeric, else its place in the order from 0. */
  readonly x: number
  readonly chosen: boolean
  readonly reference: boolean
  /** Mean with its interval, where there is one. */
  readonly mean?: number | null
  readonly lower?: number | null
  readonly upper?: number | null
  readonly skeins: readonly LadderSkein[]
  readonly lost: readonly { readonly code: string; readonly reason: string }[]
}

export type LadderBracket = {
  /** On the axis, as `x` of the levels. */
  readonly from: number
  readonly to: number
  readonly label: string
  readonly short?: string
  /** `range`: the levels that one rule allows. `difference`: between two levels, words on it. */
  readonly kind: 'range' | 'difference'
}

/** The outcome by level: every skein a dot, a line for each session, the mean with its interval, margin and noise. */
export type LadderPicture = {
  readonly title: string
  /** One soft line: what the axis is, what a dot, a line and a bar are, and the interval’s level. */
  readonly says: string
  /** What it shows, as a sentence: the name of the picture. */
  readonly finding: string
  readonly axis: { readonly label: string; readonly unit: string }
  readonly outcomeLabel: string
  /** In the picture and in the table; 1 and 2 unless given. */
  readonly decimals?: { readonly picture: number; readonly table: number }
  /** True for a loss: its axis starts at 0. */
  readonly fromZero: boolean
  readonly numeric: boolean
  readonly levels: readonly LadderLevel[]
  readonly sessions: readonly { readonly key: string; readonly label: string }[]
  readonly margin?: { readonly at: number; readonly label: string; readonly short?: string }
  readonly noise?: { readonly upTo: number; readonly label: string }
  readonly brackets: readonly LadderBracket[]
  /** Where the brackets meet. */
  readonly window?: { readonly from: number; readonly to: number; readonly label: string }
}
