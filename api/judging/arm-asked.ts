import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'

/** What is asked of one arm, with everything that stands beside its answer. */
export type ArmAsked = {
  readonly asked: Asked
  readonly level: LevelRow
  /** As they are named in a sentence. */
  readonly name: string
  readonly control: string
  readonly controlId: string
  readonly least: number
  readonly units: Answer['units']
  /** Results of the arm or of the control that are not in, though nothing was lost. */
  readonly missing: number
  readonly cautions: readonly string[]
}

/** Without any figures yet. */
export function unanswered({
  asked,
  level,
  units,
  cautions = [],
}: Pick<ArmAsked, 'asked' | 'level' | 'units'> & Partial<Pick<ArmAsked, 'cautions'>>): Omit<
  Answer,
  'reason'
> {
  return {
    condition: asked.condition,
    levelId: level.id,
    answer: 'not-settled',
    n: 0,
    units,
    estimate: null,
    table: null,
    limit: null,
    cautions,
    method: [],
    figures: {},
    more: null,
  }
}
