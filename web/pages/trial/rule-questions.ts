import { comparisons, type Question, questionOf } from '#api/contract/question.ts'
import type { Rule } from '#api/contract/trial.ts'

/** The questions that a pattern lets one choose between, in plain words. */
export type QuestionChoice = {
  readonly label: string
  readonly options: readonly { readonly value: Question; readonly words: string; readonly help?: string }[]
}

const arms: QuestionChoice = {
  label: 'The other way must be',
  options: [
    { value: 'no-worse', words: 'as good as the usual way' },
    { value: 'alike', words: 'the same as the usual way' },
    { value: 'better', words: 'better than the usual way' },
  ],
}

const light: QuestionChoice = {
  label: 'The colours are held against',
  options: [
    { value: 'light', words: 'the blue wools on their card', help: 'four or more on each card' },
    {
      value: 'open-against-covered',
      words: 'their own covered half',
      help: 'cards without blue wools, three or more',
    },
  ],
}

/**
 * What may be asked of a condition, where there is a choice. Only what is judged is offered.
 *
 * @example
 * questionChoices('P1', { outcome: 'dE00', wear: { W2: 3 }, end: 'low', against: 'reference', question: 'no-worse', margin: 1, direction: 'smaller is better' }) // undefined
 */
export function questionChoices(
  pattern: string,
  condition: Rule['conditions'][number],
): QuestionChoice | undefined {
  const question = questionOf(condition)
  if (pattern === 'P4' && condition.outcome === 'dE00' && comparisons.has(question)) return arms
  if (pattern === 'P5' && light.options.some(({ value }) => value === question)) return light
  return undefined
}
