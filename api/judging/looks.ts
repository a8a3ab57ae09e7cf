import type { RuleRow } from '#db/trials.ts'

/**
 * Which look a rule is: 1, and one more for every later edition that was locked after something was read. Whoever locked
 * it then could have seen the answer, whether or not it was recorded, and whichever way the number of sessions went.
 *
 * @param firstReadAt  When the first result was known, by the server’s clock or the person’s; undefined: nothing is read.
 */
export function lookOf(rule: RuleRow, rules: readonly RuleRow[], firstReadAt: number | undefined): number {
  const locked = rules.filter((it) => it.lockedAt !== null && it.edition <= rule.edition)
  if (firstReadAt === undefined) return 1
  const later = locked
    .slice(1)
    .filter(({ lockedAt }) => lockedAt !== null && lockedAt.getTime() >= firstReadAt)
  return 1 + later.length
}
