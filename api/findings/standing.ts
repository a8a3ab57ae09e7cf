import type { Finding } from '#api/contract/finding.ts'
import { Problem } from '#api/contract/problem.ts'
import type { Standing } from '#api/contract/standing.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import { findIn } from './find.ts'

/** What was recorded or published, as far as it is held against today. */
export type Kept = {
  /** The finding as it was then; of several parts, the first. */
  readonly finding: Finding
  readonly at: Date
  /** A later one of the same part, as it is said: “a newer sheet was published 3 March 2026”. */
  readonly newer: string | undefined
}

/** Today's finding of each part of a trial, worked out once; null of a part that it has no more. */
export function todayOf(record: TrialRecord): (stratum: string) => Finding | null {
  const found = new Map<string, Finding | null>()
  return (stratum) => {
    const known = found.get(stratum)
    if (known !== undefined) return known
    const finding = findPart(record, stratum)
    found.set(stratum, finding)
    return finding
  }
}

function findPart(record: TrialRecord, stratum: string): Finding | null {
  try {
    return findIn(record, stratum === '' ? {} : { within: stratum, alone: true })
  } catch (error) {
    if (error instanceof Problem) return null
    throw error
  }
}

/** Whether what was recorded or published still is what today's claim of the same part says. */
export function standingOf(
  record: TrialRecord,
  { finding: then, at, newer }: Kept,
  now: Finding | null,
): Standing {
  const judgedBy = isOfFirstVersion(then) ? 'first version' : 'this version'
  const verdict = now?.verdict
  const today = verdict ? { answer: verdict.answer, headline: verdict.headline } : null
  const differs = now === null || (judgedBy === 'first version' ? saidOtherwise : judgedOtherwise)(then, now)
  const changed = changeSince(record, at)
  const isChanged = differs && (judgedBy === 'this version' || changed !== undefined)
  return {
    judgedBy,
    today,
    superseded: newer !== undefined || isChanged,
    mark: isChanged
      ? `Superseded: ${changed ?? 'the record was changed after it'}. ${todaySays(today)}`
      : newer !== undefined
        ? `Superseded: ${newer}.`
        : differs
          ? `Judged by an older version; ${lowerFirst(todaySays(today))}`
          : null,
  }
}

/** Findings of the first version say nothing of gates. */
const isOfFirstVersion = (then: Partial<Finding>): boolean => then.gates === undefined

function saidOtherwise(then: Finding, now: Finding): boolean {
  return (
    then.verdict?.answer !== now.verdict?.answer ||
    (now.within === null && then.verdict?.levelId !== now.verdict?.levelId)
  )
}

/** One level of several may fail while the answer of the whole stays. */
function judgedOtherwise(then: Finding, now: Finding): boolean {
  return JSON.stringify(answersOf(then)) !== JSON.stringify(answersOf(now))
}

function answersOf({ verdict, steps, within }: Finding) {
  return {
    answer: verdict?.answer,
    level: verdict?.levelId,
    steps: steps.map(({ levelId, answer }) => [levelId, answer]),
    others: within?.others.map(({ levelId, answer }) => [levelId, answer]),
  }
}

/** What came after: a correction, or anything else that the journal of the trial holds. */
function changeSince({ readings, outcomes, journal }: TrialRecord, at: Date): string | undefined {
  const later = [...readings, ...outcomes].filter(({ createdAt }) => createdAt > at)
  if (later.some(({ supersedesId }) => supersedesId !== null)) return 'a correction came after it'
  if (later.length > 0) return 'readings came in after it'
  return journal.some((entry) => entry.at > at) ? 'the record was changed after it' : undefined
}

function todaySays(today: Standing['today']): string {
  return today === null ? 'There is no answer today.' : `Today: “${today.headline}”`
}

const lowerFirst = (words: string) => words.charAt(0).toLowerCase() + words.slice(1)
