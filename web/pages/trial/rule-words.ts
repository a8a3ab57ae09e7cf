import type { Rule } from '#api/contract/trial.ts'
import { dayAndTime } from '#web/form/date-words.ts'

/** The edition that judges: the newest that is locked, else the newest. */
export function ruleInForce(rules: readonly Rule[]): Rule | undefined {
  return rules.findLast((rule) => rule.lockedAt !== null) ?? rules.at(-1)
}

/**
 * The line under the title: when the rule was locked, and what was changed later.
 *
 * @param firstResultAt When the first result was written down; null while there is none.
 *
 * @example
 * ruleLine([], null) // 'Not locked yet. Lock the rule before the first reading; later edits are shown on every sheet.'
 */
export function ruleLine(
  rules: readonly Pick<Rule, 'edition' | 'lockedAt' | 'reason'>[],
  firstResultAt: string | null,
  zone: { readonly timeZone?: string } = {},
): string {
  const locked = rules.findLast((rule) => rule.lockedAt !== null)
  if (locked?.lockedAt == null) {
    return firstResultAt === null
      ? 'Not locked yet. Lock the rule before the first reading; later edits are shown on every sheet.'
      : 'Not locked yet, and the first reading is in. A rule locked now is shown as later than its readings.'
  }
  const before = firstResultAt === null || Date.parse(locked.lockedAt) <= Date.parse(firstResultAt)
  const edition = locked.edition > 1 ? ` Edition ${locked.edition}: ${ended(locked.reason ?? '')}` : ''
  const draft = rules.findLast((rule) => rule.edition > locked.edition)
  return [
    `Rule locked ${dayAndTime(new Date(locked.lockedAt), zone)}, ${before ? 'before' : 'after'} the first reading.`,
    edition.trim(),
    draft ? `Edition ${draft.edition} is written and not locked.` : '',
  ]
    .filter((part) => part !== '')
    .join(' ')
}

/** A reason as a sentence, with a stop at its end. */
function ended(words: string): string {
  return /[.!?…]$/.test(words) ? words : `${words}.`
}
