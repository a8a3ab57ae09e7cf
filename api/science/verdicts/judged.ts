import type { UnitOfFactor } from '../design/unit-of-factor.ts'
import type { LadderVerdict, Level } from './level-rows.ts'
import type { TrialNoise, TrialRow, TrialRule, TrialVerdict, TrialWords } from './trial-verdict.ts'

/** Above this share of the margin the noise floor is warned of; above the other nothing can hold. */
export const noiseShares = { caution: 1 / 3, blind: 1 / 2 } as const

/** What the judge's cautions, sentences and advice are made from. */
export type Judged = {
  readonly rows: readonly TrialRow[]
  readonly rule: TrialRule
  readonly noise: TrialNoise | undefined
  readonly words: TrialWords
  readonly result: LadderVerdict
  readonly counts: TrialVerdict['counts']
  readonly unit: UnitOfFactor
  readonly subject: Level | undefined
  readonly sessionsIn: number
  readonly look: number
  readonly sessionIsLevel: boolean
  readonly oneUnit: readonly string[]
  readonly cannotSeeMargin: boolean
  readonly joinedBlocks: boolean
}
