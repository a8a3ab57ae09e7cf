import type { SkeinFinding } from '#api/contract/finding.ts'
import type { SkeinHistories } from '#api/judging/skein-histories.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import { type EvidenceStep, evidenceStep } from './evidence-step.ts'
import type { NoiseFound } from './noise-of-trial.ts'

/** The evidence step of a trial, from its record. */
export function evidenceOf(
  record: TrialRecord,
  {
    histories,
    skeins,
    lockedBefore,
    noise,
  }: {
    histories: SkeinHistories
    skeins: readonly SkeinFinding[]
    lockedBefore: boolean
    noise: NoiseFound | undefined
  },
): EvidenceStep {
  const done = skeins.filter((skein) => skein.value !== null && skein.status !== 'lost')
  const ids = new Set(done.map((skein) => skein.id))
  const lots = new Set(
    record.skeins
      .flatMap((skein) => (ids.has(skein.id) ? [histories.stayAt(skein, 'dye')?.vessel.id] : []))
      .filter((id) => id !== undefined),
  )
  const grades = record.graders.filter((it) => it.kind === 'staining' || it.kind === 'change grade')
  const roles = new Set(record.skeins.map((skein) => skein.role))
  const axes = new Set(record.results.flatMap((result) => Object.keys(result.wear)))
  return evidenceStep({
    sessions: new Set(done.map((skein) => skein.sessionId)).size,
    lots: lots.size,
    hasReference:
      record.factors.some((factor) => factor.levels.some((level) => level.isReference)) ||
      roles.has('known good') ||
      roles.has('standard'),
    hasTwinOrBlank: roles.has('twin') || roles.has('dark twin') || roles.has('blank'),
    ruleFirst: lockedBefore,
    noiseKnown: noise !== undefined && noise.kind !== 'planning',
    protocols: axes.size,
    blindByTwo:
      grades.length > 0 &&
      grades.every((it) => it.blindCode !== null) &&
      new Set(grades.map((it) => it.grader)).size >= 2,
    readAgain: record.twins.length >= 2,
    outsideReports: record.reports,
  })
}
