import { outcomeKind } from '#api/contract/outcomes.ts'
import { wearInWords } from '#api/contract/wear.ts'
import type { RuleRow } from '#db/trials.ts'
import { sayValue } from './side-values.ts'

/** The rule as one paragraph: when it was locked, against what, after what, within which limits. */
export function ruleInWords(
  rule: RuleRow,
  { lockedBefore, reference }: { lockedBefore: boolean; reference: string | undefined },
): string {
  return [
    lockInWords(rule, lockedBefore),
    ...rule.conditions.slice(0, 1).map((it) => mainInWords(it, reference)),
    sidesInWords(rule),
  ]
    .filter((part) => part !== '')
    .join(' ')
}

type Condition = RuleRow['conditions'][number]

function lockInWords({ lockedAt, edition, reason }: RuleRow, before: boolean): string {
  const later = edition > 1 ? ` Edition ${edition}: ${reason ?? 'no reason given'}.` : ''
  if (lockedAt === null) return `Not locked yet.${later}`
  return `Rule locked ${dayAndTime(lockedAt)}, ${before ? 'before the first reading' : 'after the first reading'}.${later}`
}

function mainInWords(
  { outcome, margin, wear, against, statistic, atLeast, atMost }: Condition,
  reference: string | undefined,
): string {
  const worn = Object.keys(wear).length > 0 ? `, after ${wearInWords(wear)}` : ''
  const what = outcome === 'dE00' ? 'extra loss' : outcomeKind(outcome).label.toLowerCase()
  if (statistic === 'upper limit') {
    const held =
      against === 'reference' && reference
        ? `Against ${reference}${worn}: `
        : worn
          ? `After ${wearInWords(wear)}: `
          : ''
    return `${held}${what} below ${margin?.toFixed(1) ?? '?'}${outcome === 'dE00' ? ' ΔE00' : ''}.`
  }
  const limit =
    atLeast !== undefined
      ? `${sayValue(outcome, atLeast)} or better`
      : atMost !== undefined
        ? `${sayValue(outcome, atMost)} or less`
        : ''
  if (statistic === 'worst lot') return `By the worst lot: ${what} ${limit}${worn}.`
  return `${what.charAt(0).toUpperCase()}${what.slice(1)} ${limit}${worn}.`
}

function sidesInWords(rule: RuleRow): string {
  const sides = rule.conditions.slice(1).flatMap(({ outcome, atLeast, atMost, fibre }) => {
    const { label, scale } = outcomeKind(outcome)
    const name = `${label.toLowerCase()}${fibre ? ` of ${fibre}` : ''}`
    if (atLeast !== undefined) return [`${name} ${sayValue(outcome, atLeast)} or better`]
    if (atMost !== undefined)
      return [`${name} ${sayValue(outcome, atMost)} or ${scale === 'count' ? 'fewer' : 'less'}`]
    return []
  })
  if (sides.length === 0) return ''
  const text = sides.join(', ')
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`
}

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/**
 * “24 February 2026, 9:12”, in UTC: the server’s clock.
 *
 * @example
 * dayAndTime(new Date('2026-02-24T09:12:30Z')) // '24 February 2026, 9:12'
 */
export function dayAndTime(at: Date): string {
  return `${day(at)}, ${at.getUTCHours()}:${String(at.getUTCMinutes()).padStart(2, '0')}`
}

/**
 * “24 February 2026”.
 *
 * @example
 * day(new Date('2026-02-24T09:12:30Z')) // '24 February 2026'
 */
export function day(at: Date): string {
  return `${at.getUTCDate()} ${months[at.getUTCMonth()]} ${at.getUTCFullYear()}`
}
