import { acidLadder, colourwayClaim, gaugeCheck, lightCard, ownPlan, timeLadder } from './patterns-of-loss.ts'
import { classSeparation, repeatAndScale, rinsePredictor, twoArms } from './patterns-of-work.ts'
import type { Question } from './question.ts'

/** What a pattern brings along. Plain data: the pages fill their forms from it, the API its gaps. */
export type PatternPlan = {
  readonly pattern: PatternName
  /** “A ladder of steam times”. */
  readonly name: string
  /** What it takes, in a line: “a ladder of steam times, four sessions”. */
  readonly says: string
  /** A doubt of this pattern, as one asks it. */
  readonly question: string
  readonly factor: PatternFactor
  readonly bench: PatternBench
  readonly block: 'session' | 'vessel' | 'parent'
  readonly rule: PatternRule
  /** What is usually held the same, for the list on the plan. */
  readonly held: readonly string[]
}

export type PatternName = 'P0' | 'P1' | 'P2' | 'P3' | 'P4' | 'P5' | 'P6' | 'P7' | 'P8' | 'own'

export type PatternLevel = { readonly label: string; readonly reference?: true }

export type PatternFactor = {
  /** Of the table of variables, or one’s own. */
  readonly key: string
  readonly kind: 'number' | 'category'
  readonly stage: 'soak' | 'dye' | 'set' | 'rinse' | 'dry' | 'wash' | 'contact' | 'rub' | 'light' | 'remedy'
  readonly levels: readonly PatternLevel[]
}

export type PatternBench = {
  readonly sessionKind: 'stove' | 'bench' | 'wash' | 'contact' | 'rub' | 'light' | 'remedy'
  readonly session: Counted
  /** What a session is, in a few words: “a day, a steamer load”. */
  readonly sessionHelp: string
  readonly sessions: number
  readonly vesselKind: 'pot' | 'jar' | 'packet' | 'tray' | 'bowl' | 'card'
  readonly vessel: Counted
  readonly vesselHelp: string
  readonly vesselsPerLevel: number
  readonly skeinsPerVessel: number
  /** What skeins in one vessel have in common: “heat”. */
  readonly shares: string
  /** Whether a level is given to a whole vessel, or to each skein in a vessel that holds every level (a light card). */
  readonly given: 'vessel' | 'skein'
}

export type Counted = { readonly one: string; readonly many: string }

export type PatternRule = {
  /** With their usual limits. */
  readonly conditions: readonly PatternCondition[]
  /** Limits that one may add, blank at first. */
  readonly offers: readonly PatternCondition[]
  readonly method: 'paired' | 'model' | 'pooled'
  readonly confidence: number
}

/** The shape of a rule’s condition (`RuleCondition`). */
export type PatternCondition = {
  readonly outcome: string
  readonly fibre?: string
  readonly wear: Readonly<Record<string, number>>
  readonly end: 'low' | 'high'
  readonly against: 'reference' | 'next level' | 'control' | 'standard' | 'none'
  /** Every pattern names it; rules of the first version named a statistic in its place. */
  readonly question?: Question
  /** How a limit counts, where the question does not say it: every unit, or each lot by its own. */
  readonly statistic?: 'upper limit' | 'mean' | 'every unit' | 'worst lot' | 'bracket'
  readonly leastGain?: number
  readonly margin?: number
  readonly atLeast?: number
  readonly atMost?: number
  readonly direction: 'smaller is better' | 'larger is better'
}

/** Every pattern, in the order in which they are offered. */
export const patternPlans: readonly PatternPlan[] = [
  timeLadder,
  acidLadder,
  colourwayClaim,
  twoArms,
  lightCard,
  repeatAndScale,
  classSeparation,
  rinsePredictor,
  gaugeCheck,
  ownPlan,
]

/**
 * What a pattern brings along; a name that is none brings that of one’s own.
 *
 * @example
 * patternPlan('P1').bench.sessions // 4
 */
export function patternPlan(pattern: string): PatternPlan {
  return patternPlans.find((it) => it.pattern === pattern) ?? ownPlan
}
