import type { ResultSeen } from '#db/trial-record.ts'
import type { RuleRow } from '#db/trials.ts'

/**
 * Which look a rule is: 1, and one more for each earlier locked edition whose planned sessions were in when the next
 * was locked. Whoever changed the rule then had seen the answer, whether or not it was declared.
 *
 * @param sessionOf  The session of a result, as the verdict counts them.
 */
export function lookOfRule(
  rule: RuleRow,
  rules: readonly RuleRow[],
  {
    results,
    sessionOf,
  }: { results: readonly ResultSeen[]; sessionOf: (result: ResultSeen) => string | undefined },
): number {
  const locked = rules.filter((it) => it.lockedAt !== null && it.edition <= rule.edition)
  let look = 1
  for (const [i, edition] of locked.entries()) {
    const next = locked[i + 1]
    if (!next?.lockedAt) break
    const seen = new Set<string>()
    for (const result of results) {
      const session = result.createdAt < next.lockedAt ? sessionOf(result) : undefined
      if (session !== undefined) seen.add(session)
    }
    if (seen.size >= edition.plannedSessions) look++
  }
  return look
}
