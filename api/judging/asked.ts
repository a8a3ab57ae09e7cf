import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Condition } from './condition.ts'
import type { JudgedTrial } from './judged-trial.ts'
import type { Noise } from './noise.ts'
import type { Stratum } from './strata.ts'

/** One condition, asked within one combination of the other factors’ levels. */
export type Asked = {
  readonly trial: JudgedTrial
  readonly condition: Condition
  readonly stratum: Stratum
  /** The factor whose levels are judged, and its levels, least first. */
  readonly factor: FactorWithLevels
  readonly levels: readonly LevelRow[]
  /** The level that others are held against: the chosen reference or control. Never the last of a list. */
  readonly reference: LevelRow | undefined
  /** Sessions, lots, benches or cards that the rule planned. */
  readonly planned: number
  /** One-sided, after looks and strata. */
  readonly confidence: number
  readonly method: 'paired' | 'model' | 'pooled'
  /** Of the way in which this outcome was measured; undefined where it has none (grades, counts) or none is known. */
  readonly noise: Noise | undefined
}

/** A question’s engine: every level of the stratum that can be judged, or one answer of the whole. Pure. */
export type Engine = (asked: Asked) => readonly Answer[]
