import type { PatternCondition } from './patterns.ts'

/** The wear that a loss is judged after, unless a pattern says otherwise: three warm hand washes. */
export const usualWear = { W2: 3 } as const

/** No more extra loss than the margin, held against the reference. */
export const lossWithin = (margin: number): PatternCondition => ({
  outcome: 'dE00',
  wear: usualWear,
  end: 'low',
  against: 'reference',
  question: 'no-worse',
  statistic: 'upper limit',
  margin,
  direction: 'smaller is better',
})

/** Staining of white wool after that wear: this grade or better in every session. */
export const stainingAtLeast = (atLeast?: number): PatternCondition => ({
  outcome: 'staining',
  fibre: 'wool',
  wear: usualWear,
  end: 'low',
  against: 'none',
  question: 'within-limit',
  statistic: 'every unit',
  ...(atLeast === undefined ? {} : { atLeast }),
  direction: 'larger is better',
})

/** Rinses until the water is clear to grade 4: so many or fewer in every session. */
export const rinsesAtMost = (atMost?: number): PatternCondition => ({
  outcome: 'rinses to 4',
  wear: {},
  end: 'low',
  against: 'none',
  question: 'within-limit',
  statistic: 'every unit',
  ...(atMost === undefined ? {} : { atMost }),
  direction: 'smaller is better',
})

/** Felting: it closes the window from above. */
export const feltingAtMost = (atMost?: number): PatternCondition => ({
  outcome: 'felting',
  wear: {},
  end: 'high',
  against: 'none',
  question: 'within-limit',
  statistic: 'every unit',
  ...(atMost === undefined ? {} : { atMost }),
  direction: 'smaller is better',
})

/** A grade of which the worst lot decides. */
export const worstLot = (
  outcome: string,
  wear: Readonly<Record<string, number>>,
  fibre?: string,
): PatternCondition => ({
  outcome,
  ...(fibre === undefined ? {} : { fibre }),
  wear,
  end: 'low',
  against: 'none',
  question: 'within-limit',
  statistic: 'worst lot',
  atLeast: 4,
  direction: 'larger is better',
})
