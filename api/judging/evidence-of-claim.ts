import { judgedBy } from '#api/contract/question.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { OutcomeSeen } from '#db/trial-record.ts'
import type { Claim } from './claim.ts'
import { type EvidenceStep, evidenceStep } from './evidence-step.ts'
import type { StratumClaim } from './stratum-claim.ts'

/**
 * The evidence step of a claim, from its record: how much was done, not how well it went. Without a claim (nothing
 * locked, nothing read) it is step 0.
 */
export function evidenceOfClaim(claim: Claim, it: StratumClaim): EvidenceStep {
  const { trial, timing, conditions, factor } = claim
  const { record, histories } = trial
  const done = it.rows.filter(({ value }) => value !== undefined)
  const lots = new Set(done.flatMap(({ lot }) => lot ?? []))
  const roles = new Set(record.skeins.map(({ role }) => role))
  const worked = it.gates.find(({ gate }) => gate === 'controls')?.open ?? true
  const graded = conditions.some(
    ({ outcome }) => judgedBy(outcome) === 'eye' || judgedBy(outcome) === 'yes-no',
  )
  const measured = conditions.some((condition) => judgedBy(condition.outcome) === 'meter')
  const grades = record.outcomes.filter(({ kind }) => judgedBy(kind) === 'eye' || judgedBy(kind) === 'yes-no')
  const agreed = gradersAgree(grades)
  const noiseKnown = it.noise !== undefined && it.noise.kind !== 'planning'
  const ids = new Set(
    it.rows.flatMap(({ skein }) => [skein.id, ...(skein.cutFromId ? [skein.cutFromId] : [])]),
  )
  const sessions = new Set(
    done.flatMap(({ skein }) => histories.stayAt(skein, factor.stage)?.vessel.sessionId ?? []),
  )
  const axes = new Set(
    record.results.flatMap((result) => (ids.has(result.skeinId) ? Object.keys(result.wear) : [])),
  )
  const step = evidenceStep({
    sessions: Math.max(sessions.size, done.length > 0 ? 1 : 0),
    lots: lots.size,
    hasReference:
      factor.levels.some((level) => level.isReference) ||
      (worked && (roles.has('known good') || roles.has('known bleeder') || roles.has('standard'))),
    hasTwinOrBlank: roles.has('twin') || roles.has('dark twin') || (worked && roles.has('blank')),
    ruleFirst: timing === 'before',
    noiseKnown: graded && !measured ? agreed : noiseKnown,
    graded: graded && !measured,
    protocols: axes.size,
    blindByTwo:
      grades.length > 0 &&
      grades.every(({ blindCode }) => blindCode !== null) &&
      new Set(grades.flatMap(({ grader }) => grader ?? [])).size >= 2,
    readAgain: graded && !measured ? agreed : record.twins.length >= 2 && noiseKnown,
    outsideReports: record.reports,
  })
  if (timing === 'before' || step.step === 'E0' || step.step === 'E1') return step
  const why =
    timing === 'not-locked'
      ? 'the rule is not locked'
      : timing === 'after'
        ? 'the rule was written after the work had begun'
        : 'the dates of the work are not recorded'
  return { step: 'E1', why: `${why}, so step 1 at most` }
}

/** Two graders, or one twice, within half a step wherever both graded the same thing. */
function gradersAgree(grades: readonly OutcomeSeen[]): boolean {
  const things = groupBy(grades, ({ skeinId, vesselId, kind, fibre, wearKey }) =>
    JSON.stringify([skeinId, vesselId, kind, fibre, wearKey]),
  )
  const twice = [...things.values()].filter((group) => group.length >= 2)
  return (
    twice.length > 0 &&
    twice.every((group) => {
      const values = group.map(({ value }) => value)
      return Math.max(...values) - Math.min(...values) <= 0.5
    })
  )
}
