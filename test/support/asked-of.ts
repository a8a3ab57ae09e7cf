import type { Asked } from '#api/judging/asked.ts'
import type { Condition } from '#api/judging/condition.ts'
import type { JudgedTrial } from '#api/judging/judged-trial.ts'

/** A condition with the parts that a test does not speak of. */
export function aCondition(parts: Partial<Condition> & Pick<Condition, 'question' | 'outcome'>): Condition {
  return {
    wear: {},
    end: 'low',
    against: 'none',
    direction: 'smaller is better',
    byLot: false,
    ...parts,
  }
}

/** A condition asked of the first factor of a trial, in its one stratum. */
export function askedOf(trial: JudgedTrial, condition: Condition, parts: Partial<Asked> = {}): Asked {
  const [factor] = trial.record.factors
  if (!factor) throw new Error('A trial that is asked varies something.')
  return {
    trial,
    condition,
    stratum: { key: '', parts: [] },
    factor,
    levels: factor.levels,
    reference: factor.levels.find((level) => level.isReference),
    planned: 3,
    confidence: 0.95,
    method: 'paired',
    noise: undefined,
    ...parts,
  }
}
