import { outcomeKind } from '#api/contract/outcomes.ts'
import type { Condition } from '#api/judging/condition.ts'
import type { RuleTiming } from '#api/judging/gates.ts'
import { groupBy } from '#api/science/group-by.ts'
import { dayAndTime } from '#api/words/dates.ts'
import { margin, sentenceCase } from '#api/words/numbers.ts'
import { afterWear, limitInWords, outcomeInSentence } from '#api/words/outcomes.ts'
import type { RuleRow } from '#db/trials.ts'

/** The rule as one paragraph: when it was locked, then every condition that it asks, with its numbers as they were locked. */
export function ruleInWords(
  rule: RuleRow,
  {
    timing,
    reference,
    conditions,
  }: {
    readonly timing: RuleTiming | undefined
    readonly reference: string | undefined
    readonly conditions: readonly Condition[]
  },
): string {
  const lots = conditions.filter(({ byLot }) => byLot)
  const rest = conditions.filter(({ byLot }) => !byLot)
  return [
    lockInWords(rule, timing),
    ...(lots.length > 0 ? [lotsInWords(lots)] : []),
    ...rest.map((condition) => `${sentenceCase(conditionInWords(condition, reference))}.`),
  ].join(' ')
}

function lockInWords({ lockedAt, edition, reason }: RuleRow, timing: RuleTiming | undefined): string {
  const later = edition > 1 ? ` Edition ${edition}: ${reason ?? 'no reason given'}.` : ''
  if (lockedAt === null) return `Not locked yet.${later}`
  const when =
    timing === 'after'
      ? ', after the work had begun'
      : timing === 'dates-unknown'
        ? ', before the first reading was entered; the dates of the work are not recorded'
        : ', before the first reading'
  return `Rule locked ${dayAndTime(lockedAt)}${when}.${later}`
}

/**
 * One condition as the rule says it.
 *
 * @example
 * conditionInWords({ question: 'no-worse', outcome: 'dE00', wear: { W2: 3 }, end: 'low', against: 'reference', margin: 1.25, direction: 'smaller is better', byLot: false }, '75 minutes') // 'against 75 minutes, after three warm hand washes: extra change in colour below 1.25 ΔE00'
 */
export function conditionInWords(condition: Condition, reference: string | undefined): string {
  const { question, outcome, fibre, wear, against, end } = condition
  const what = outcome === 'dE00' ? 'change in colour' : outcomeInSentence(outcome, fibre)
  const unit = outcomeKind(outcome).unit
  const by = (value: number | undefined) =>
    value === undefined ? '' : `${margin(value)}${unit === undefined ? '' : ` ${unit}`}`
  const worn = afterWear(wear)
  const than = reference === undefined ? 'the reference' : reference
  if (question === 'no-worse')
    return condition.margin === undefined
      ? `${what} no worse than at ${than}${worn}`
      : `against ${than}${worn === '' ? '' : `,${worn}`}: extra ${what} below ${by(condition.margin)}`
  if (question === 'alike')
    return `${what} the same as at ${than}, within ${by(condition.margin) || 'no step'}${worn}`
  if (question === 'better')
    return `${what} better than at ${than}${condition.leastGain ? ` by more than ${by(condition.leastGain)}` : ''}${worn}`
  if (question === 'to-standard')
    return `within ${by(condition.atMost ?? condition.margin)} of the kept standard${worn}`
  if (question === 'light')
    return condition.atLeast === undefined
      ? 'placed between the blue wools of its own card'
      : `light fastness like blue wool ${condition.atLeast} or better`
  if (question === 'open-against-covered')
    return `the open half may change by less than ${by(condition.margin)} more than the covered one${worn}`
  if (question === 'sees')
    return `the way of measuring must see a margin of ${margin(condition.margin ?? 2 * (condition.atMost ?? 0))}`
  if (against === 'next level')
    return `${what} within ${margin(condition.margin ?? 0)} of the next level${worn} (described, not tested)`
  return `${what} ${limitInWords(condition)}${worn}${end === 'high' ? ', which sets the upper end' : ''}`
}

/** “Every lot by its own limits: staining of wool 4 or better after five warm hand washes; …”: the same limit is said once. */
function lotsInWords(lots: readonly Condition[]): string {
  const byLimit = groupBy(
    lots,
    (condition) => `${outcomeInSentence(condition.outcome, condition.fibre)} ${limitInWords(condition)}`,
  )
  const parts = [...byLimit].map(
    ([limit, group]) =>
      `${limit}${group
        .map(({ wear }) => afterWear(wear))
        .filter((it) => it !== '')
        .join(',')}`,
  )
  return `Every lot by its own limits: ${parts.join('; ')}.`
}
