import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'

/** The one answer of a condition that cannot be asked of its stratum, and why. */
export function notAsked({ condition }: Pick<Asked, 'condition'>, reason: string): Answer {
  return {
    condition,
    levelId: null,
    answer: 'not-settled',
    reason,
    n: 0,
    units: { one: 'session', many: 'sessions' },
    estimate: null,
    table: null,
    limit: null,
    cautions: [],
    method: [],
    figures: {},
    more: null,
  }
}
