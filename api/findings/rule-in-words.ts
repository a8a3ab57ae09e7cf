import { outcomeKind } from '#api/contract/outcomes.ts'
import { wearInWords } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { RuleRow } from '#db/trials.ts'
import { perCent, sayValue, sideLabel } from './side-values.ts'

/** The rule as one paragraph: when it was locked, against what, after what, within which limits. */
export function ruleInWords(
  rule: RuleRow,
  { lockedBefore, reference }: { lockedBefore: boolean; reference: string | undefined },
): string {
  return [
    lockInWords(rule, lockedBefore),
    ...(byLot(rule)
      ? [lotsInWords(rule)]
      : rule.conditions.slice(0, 1).map((it) => mainInWords(it, reference))),
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
  const what = outcome === 'dE00' ? 'extra loss' : sideLabel(outcome)
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
  if (against === 'next level')
    return `${capital(what)} within ${margin?.toFixed(1) ?? '?'} of the next level${worn}.`
  return `${capital(what)} ${limit}${worn}.`
}

const byLot = (rule: RuleRow) => rule.conditions.some((it) => it.statistic === 'worst lot')

/** “By the worst lot: staining 4 or better after five warm hand washes; …”: the same limit is said once. */
function lotsInWords({ conditions }: RuleRow): string {
  const lots = conditions.filter((it) => it.statistic === 'worst lot')
  const byLimit = groupBy(
    lots,
    ({ outcome, fibre, atLeast }) =>
      `${sideLabel(outcome)}${fibre ? ` of ${fibre}` : ''} ${sayValue(outcome, atLeast ?? 4)} or better`,
  )
  const parts = [...byLimit].map(([limit, group]) => {
    const after = group.flatMap(({ wear }) => (Object.keys(wear).length === 0 ? [] : [wearInWords(wear)]))
    return after.length === 0 ? limit : `${limit} after ${after.join(', after ')}`
  })
  return `By the worst lot: ${parts.join('; ')}.`
}

function sidesInWords(rule: RuleRow): string {
  const conditions = byLot(rule)
    ? rule.conditions.filter((it) => it.statistic !== 'worst lot')
    : rule.conditions.slice(1)
  const sides = conditions.flatMap(({ outcome, atLeast, atMost, fibre }) => {
    const { scale } = outcomeKind(outcome)
    const name = `${sideLabel(outcome)}${fibre ? ` of ${fibre}` : ''}`
    if (atLeast !== undefined) return [`${name} ${sayValue(outcome, atLeast)} or better`]
    if (atMost !== undefined)
      return [
        `${name} ${sayValue(outcome, atMost)}${perCent(outcome)} or ${scale === 'count' ? 'fewer' : 'less'}`,
      ]
    return []
  })
  if (sides.length === 0) return ''
  return `${capital(sides.join(', '))}.`
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

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
