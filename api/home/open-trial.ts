import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import type { Finding } from '#api/contract/finding.ts'
import type { NewestFinding, OpenTrial } from '#api/contract/home.ts'
import type { BenchSessionRow, OpenTrialRow } from '#db/home.ts'

/** A line of the list of open trials. */
export function presentOpenTrial(
  trial: OpenTrialRow,
  sessions: readonly BenchSessionRow[],
  { finding, planned }: { readonly finding: Finding | undefined; readonly planned: number | undefined },
): OpenTrial {
  const skeins = sessions.reduce((sum, it) => sum + it.skeins, 0)
  const begun = sessions.reduce((sum, it) => sum + it.begun, 0)
  const read = sessions.filter((it) => it.begun > 0).length
  const inPlan = Math.max(planned ?? 0, sessions.length)
  const levels = finding?.levels ?? []
  return {
    trial: { id: trial.id, title: trial.title, question: trial.question, invented: trial.invented },
    sessions: { read, planned: inPlan },
    sessionWords: sessionWords(trial.pattern, { read, inPlan }),
    skeinsRead: finding ? finding.skeins.filter((it) => it.value !== null).length : begun,
    skeins: finding && finding.skeins.length > 0 ? finding.skeins.length : skeins,
    swatches: levels.flatMap(({ after, before }) => after ?? before ?? []),
    verdict: finding?.verdict?.answer ?? null,
    words: wordsOf(finding, { planned, skeins, begun }),
  }
}

/** The answer of a finding in a few words, without its stop: “35 minutes of steam holds”. */
function wordsOf(
  finding: Finding | undefined,
  {
    planned,
    skeins,
    begun,
  }: { readonly planned: number | undefined; readonly skeins: number; readonly begun: number },
): string {
  // The headline names every part of the trial; nothing of a person’s own words is changed.
  if (finding?.verdict) return finding.verdict.headline.replace(/\.$/, '')
  if (skeins === 0) return planned === undefined ? 'being planned' : 'places not drawn yet'
  if (begun === 0) return 'nothing read yet'
  return planned === undefined ? 'no rule yet' : `no verdict before ${planned} sessions`
}

function sessionWords(
  pattern: string,
  { read, inPlan }: { readonly read: number; readonly inPlan: number },
): string {
  const { session } = benchOfPattern(pattern, undefined)
  if (inPlan === 0) return 'not planned yet'
  const word = inPlan === 1 ? session.one : session.many
  return read === inPlan ? `${inPlan} ${word}` : `${read} of ${inPlan} ${word}`
}

/** The finding that the first page shows in full. */
export function presentNewest(finding: Finding): NewestFinding | null {
  const { verdict } = finding
  if (!verdict) return null
  const level = finding.levels.find((it) => it.id === verdict.levelId)
  const pair = level?.before && level.after ? { before: level.before, after: level.after } : null
  return {
    trialId: finding.trialId,
    question: finding.question,
    invented: finding.invented,
    answer: verdict.answer,
    headline: verdict.headline,
    lead: verdict.lead,
    counts: verdict.counts,
    alsoTried: (finding.within?.others ?? []).map((it) => it.headline),
    withinLevelId: finding.within?.levelId ?? null,
    pair,
    after: finding.outcome?.wearInWords ?? '',
  }
}
