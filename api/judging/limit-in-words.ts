import { outcomeKind } from '#api/contract/outcomes.ts'
import { wearInWords } from '#api/contract/wear.ts'
import { gradeText } from '#api/science/fastness/grades.ts'
import type { Condition } from './condition.ts'

type Tested = Pick<Condition, 'outcome' | 'fibre' | 'wear'>
type Limit = Pick<Condition, 'outcome' | 'atLeast' | 'atMost'>

/**
 * What a condition looks at, as it stands inside a sentence. A person’s own outcome keeps its capitals.
 *
 * @example
 * testInWords({ outcome: 'staining', fibre: 'wool', wear: { W2: 5 } }) // 'staining of wool after five warm hand washes'
 * @example
 * [testInWords({ outcome: 'lightness', wear: {} }), testInWords({ outcome: 'bled', wear: {} })] // ['L*', 'bleeding']
 */
export function testInWords({ outcome, fibre, wear }: Tested): string {
  const of = fibre ? ` of ${fibre}` : ''
  const after = Object.keys(wear).length === 0 ? '' : ` after ${wearInWords(wear)}`
  return `${outcomeInWords(outcome)}${of}${after}`
}

function outcomeInWords(outcome: string): string {
  if (outcome === 'dE00') return 'colour change'
  if (outcome === 'bled') return 'bleeding'
  const { label } = outcomeKind(outcome)
  return label !== outcome && /^[A-Z][a-z]/.test(label)
    ? `${label.charAt(0).toLowerCase()}${label.slice(1)}`
    : label
}

/**
 * A value as it is said: a grade of 3.5 as “3-4”, a share with its sign, a yes or no in words.
 *
 * @example
 * [valueInWords('staining', 3.5), valueInWords('dye left', 12.5), valueInWords('bled', 1)] // ['3-4', '12.5\u00a0%', 'bled']
 */
export function valueInWords(outcome: string, value: number): string {
  const { scale, unit } = outcomeKind(outcome)
  if (scale === 'yes-no') return value > 0 ? 'bled' : 'no bleeding'
  if (scale === 'grade' && Number.isInteger(value * 2) && value >= 1 && value <= 5) return gradeText(value)
  const number = String(Number(value.toPrecision(6))).replace('-', '−')
  return unit === undefined ? number : `${number}\u00a0${unit}`
}

/**
 * A limit as it is said.
 *
 * @example
 * [limitInWords({ outcome: 'staining', atLeast: 4 }), limitInWords({ outcome: 'rinses to 4', atMost: 4 })] // ['4 or better', '4 or fewer']
 * @example
 * limitInWords({ outcome: 'pH', atLeast: 4, atMost: 5.5 }) // '4 or more and 5.5 or less'
 */
export function limitInWords({ outcome, atLeast, atMost }: Limit): string {
  const { scale } = outcomeKind(outcome)
  if (scale === 'yes-no') return atMost === undefined ? 'bleeding' : 'no bleeding'
  const least =
    atLeast === undefined
      ? []
      : [`${valueInWords(outcome, atLeast)} or ${scale === 'grade' ? 'better' : 'more'}`]
  const most =
    atMost === undefined
      ? []
      : [`${valueInWords(outcome, atMost)} or ${scale === 'count' ? 'fewer' : 'less'}`]
  return [...least, ...most].join(' and ')
}
