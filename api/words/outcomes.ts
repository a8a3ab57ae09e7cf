import { outcomeKind } from '#api/contract/outcomes.ts'
import { wearInWords } from '#api/contract/wear-words.ts'
import { gradeText } from '#api/science/fastness/grades.ts'

/**
 * A value of an outcome as it is said: a grade of 3.5 as “3-4”, a yes or no in words, the rest as a plain number.
 *
 * @example
 * [valueInWords('staining', 3.5), valueInWords('bled', 1), valueInWords('dye left', 6), valueInWords('rinses to 4', 4)] // ['3-4', 'yes', '6\u00a0%', '4']
 */
export function valueInWords(outcome: string, value: number): string {
  const { scale, unit } = outcomeKind(outcome)
  if (scale === 'yes-no') return value === 0 ? 'no' : 'yes'
  if (scale === 'grade' && Number.isInteger(value * 2) && value >= 1 && value <= 5) return gradeText(value)
  const number = String(Number(value.toPrecision(6))).replace('-', '−')
  return unit === undefined ? number : `${number}\u00a0${unit}`
}

/**
 * A limit as it is said.
 *
 * @example
 * [limitInWords({ outcome: 'staining', atLeast: 4 }), limitInWords({ outcome: 'rinses to 4', atMost: 4 }), limitInWords({ outcome: 'bled', atMost: 0 })] // ['4 or better', '4 or fewer', 'no bleeding']
 */
export function limitInWords({
  outcome,
  atLeast,
  atMost,
}: {
  readonly outcome: string
  readonly atLeast?: number | undefined
  readonly atMost?: number | undefined
}): string {
  const { scale } = outcomeKind(outcome)
  if (outcome === 'bled' && atMost === 0) return 'no bleeding'
  if (atLeast !== undefined)
    return `${valueInWords(outcome, atLeast)} or ${scale === 'grade' ? 'better' : 'more'}`
  if (atMost !== undefined)
    return `${valueInWords(outcome, atMost)} or ${scale === 'count' ? 'fewer' : 'less'}`
  return ''
}

/**
 * An outcome inside a sentence. Our own names are lower case there; signs (L*, pH, ΔE00) and a person’s own words stay
 * as they are written.
 *
 * @example
 * [outcomeInSentence('staining'), outcomeInSentence('lightness'), outcomeInSentence('Grandma’s test')] // ['staining', 'L*', 'Grandma’s test']
 */
export function outcomeInSentence(outcome: string, fibre?: string): string {
  const { label } = outcomeKind(outcome)
  const own = label === outcome
  const name = !own && /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label
  return fibre === undefined ? name : `${name} of ${fibre}`
}

/**
 * After what it was read.
 *
 * @example
 * [afterWear({ W2: 3 }), afterWear({})] // [' after three warm hand washes', '']
 */
export function afterWear(wear: Readonly<Record<string, number>>): string {
  return Object.keys(wear).length === 0 ? '' : ` after ${wearInWords(wear)}`
}
