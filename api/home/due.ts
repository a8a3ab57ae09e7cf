import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import type { Due } from '#api/contract/home.ts'
import { wearAxes, wearKey } from '#api/contract/wear.ts'
import type { BenchSessionRow, DueExposureRow, OpenTrialRow, ReadAtWearRow } from '#db/home.ts'
import type { RuleCondition } from '#db/tables.ts'

/** What is to be done next: readings that exposures make due, then the nearest step of each trial. */
export function dueOf(
  trials: readonly OpenTrialRow[],
  known: {
    readonly sessions: readonly BenchSessionRow[]
    readonly readAt: readonly ReadAtWearRow[]
    readonly exposures: readonly DueExposureRow[]
    /** The condition that judges each trial, if it has a rule. */
    readonly judges: ReadonlyMap<string, RuleCondition>
  },
): Due[] {
  const due: Due[] = []
  for (const trial of trials) {
    const exposures = known.exposures.filter((it) => it.trialId === trial.id)
    const seen = new Set<string>()
    for (const it of exposures) {
      // Of one window only the nearest date: the others come when this one has been read.
      if (seen.has(it.sessionId)) continue
      seen.add(it.sessionId)
      due.push(dueReading(it, trial))
    }
    if (exposures.length > 0) continue
    const sessions = known.sessions.filter((it) => it.trialId === trial.id)
    const readAt = known.readAt.filter((it) => it.trialId === trial.id)
    const next = nextStep(sessions, { trial, readAt, judge: known.judges.get(trial.id) })
    if (next) due.push(next)
  }
  return due.sort((a, b) => (a.day ?? '9').localeCompare(b.day ?? '9'))
}

function dueReading(it: DueExposureRow, trial: OpenTrialRow): Due {
  const light = it.protocol.startsWith('X')
  const week = it.startedAt ? Math.round((Date.parse(it.day) - it.startedAt.getTime()) / 604_800_000) : 0
  const of = light
    ? [it.label, counted(it.vessels, 'card'), counted(it.skeins, 'piece')]
    : [trial.title, counted(it.skeins, 'piece')]
  const washes = Object.hasOwn(wearAxes, it.protocol) ? wearAxes[it.protocol as 'W2'].one : it.protocol
  return {
    kind: light ? 'light' : 'wash',
    trialId: trial.id,
    sessionId: it.sessionId,
    day: it.day,
    what: light ? `Light cards${week > 0 ? `, week ${week}` : ''}` : `${capital(washes)}: ${it.label}`,
    of: of.join(' · '),
    button: light ? 'Read' : 'Open',
  }
}

function nextStep(
  sessions: readonly BenchSessionRow[],
  {
    trial,
    readAt,
    judge,
  }: {
    readonly trial: OpenTrialRow
    readonly readAt: readonly ReadAtWearRow[]
    readonly judge: RuleCondition | undefined
  },
): Due | undefined {
  for (const it of sessions) {
    const common = { trialId: trial.id, sessionId: it.sessionId, day: it.heldOn }
    const label = lower(it.label)
    if (it.begun === 0 && it.vesselsDone === 0) {
      const bench = benchOfPattern(trial.pattern, undefined)
      const own = { one: it.vesselKind, many: `${it.vesselKind}s` }
      const vessel = bench.vesselKind === it.vesselKind ? bench.vessel : own
      const of = `${trial.title} · ${it.vessels} ${it.vessels === 1 ? vessel.one : vessel.many}, places drawn`
      const what = it.kind === 'stove' ? `${it.label} at the stove` : it.label
      return { ...common, kind: 'session', what, of, button: 'Bench sheet' }
    }
    if (it.begun < it.skeins) {
      const left = it.skeins - it.begun
      const what = it.begun === 0 ? `Read the dry skeins, ${label}` : `Read the other skeins, ${label}`
      return {
        ...common,
        kind: 'read',
        what,
        of: `${trial.title} · ${counted(left, 'skein')}`,
        button: 'Read',
      }
    }
    if (!judge || wearKey(judge.wear) === '') continue
    const judged = readAt
      .filter((row) => row.sessionId === it.sessionId && row.kind === judge.outcome)
      .filter((row) => row.wearKey === wearKey(judge.wear))
      .reduce((sum, row) => sum + row.skeins, 0)
    if (judged > 0) continue
    const of = `${trial.title} · ${counted(it.skeins, 'skein')}`
    return { ...common, kind: 'wash', what: `Wear and read again, ${label}`, of, button: 'Open' }
  }
  return undefined
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
