import { outcomeKind } from '#api/contract/outcomes.ts'
import { figure, margin as marginFigure } from '#api/words/numbers.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import type { Condition } from './condition.ts'
import { levelName } from './level-name.ts'

/** How a level’s difference from the reference is said in a sentence. */
export type SaidOfDifference = {
  readonly atMost: (upper: number) => string
  readonly atLeast: (lower: number) => string
  readonly between: (lower: number, upper: number) => string
}

/**
 * Sentences on one level against the reference: “At 35 minutes it changed at most 0.55 more than at 75 minutes; you
 * allowed 1.0.”
 *
 * @example
 * const factor = { kind: 'number', unit: 'min' }
 * const said = saidOfDifference({ outcome: 'dE00', margin: 1, direction: 'smaller is better' }, factor, { label: '35', value: 35 }, { label: '75', value: 75 })
 * said.between(-0.3, 1.2) // 'At 35 minutes it may have changed from 0.30 less to 1.20 more than at 75 minutes; you allowed 1.0.'
 */
export function saidOfDifference(
  { outcome, margin, direction }: Pick<Condition, 'outcome' | 'margin' | 'direction'>,
  factor: Pick<FactorWithLevels, 'kind' | 'unit'>,
  level: Pick<LevelRow, 'label' | 'value'>,
  reference: Pick<LevelRow, 'label' | 'value'>,
): SaidOfDifference {
  const numbered = factor.kind !== 'category' && level.value !== null && reference.value !== null
  const [one, other] = [levelName(level, factor), levelName(reference, factor)]
  const than = numbered ? `than at ${other}` : `than ${other}`
  const allowed = margin === undefined ? '' : `; you allowed ${marginFigure(margin)}`
  const { label, unit = '' } = outcomeKind(outcome)
  const ofColour = outcome === 'dE00'
  const subject = ofColour
    ? numbered
      ? `At ${one} it`
      : one
    : `${label}: ${numbered ? `at ${one} it` : one}`
  const [more, less] = direction === 'smaller is better' ? ['more', 'less'] : ['less', 'more']
  const amount = (size: number) =>
    `${figure(Math.abs(size))}${ofColour || unit === '' ? '' : ` ${unit}`} ${size < 0 ? less : more}`
  const did = ofColour ? 'changed' : 'was'
  return {
    atMost: (upper) =>
      `${subject} ${did} ${upper < 0 ? 'at least' : 'at most'} ${amount(upper)} ${than}${allowed}.`,
    atLeast: (lower) =>
      `${subject} ${did} ${lower < 0 ? 'at most' : 'at least'} ${amount(lower)} ${than}${allowed}.`,
    between: (lower, upper) =>
      `${subject} may have ${ofColour ? 'changed' : 'been'} from ${amount(lower)} to ${amount(upper)} ${than}${allowed}.`,
  }
}
