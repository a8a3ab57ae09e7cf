import { day } from '#api/words/dates.ts'
import { counted } from '#api/words/numbers.ts'
import type { JournalSeen, TrialRecord } from '#db/trial-record.ts'

/**
 * The changes of what is judged that were made after the first reading: everything changed, removed or corrected, and a
 * level or a place given anew to something from which one was taken. What is simply added (the next day’s pots) is work.
 */
export function changesAfterReading(journal: readonly JournalSeen[]): JournalSeen[] {
  const taken = new Set<string>()
  return journal.filter((entry) => {
    if (entry.action === 'removed' && entry.before) taken.add(thingOf(entry.noun, entry.before))
    if (entry.action !== 'added') return true
    return entry.after !== null && taken.has(thingOf(entry.noun, entry.after))
  })
}

/** What a treatment or placement was given to: the same thing given another level is a change. */
function thingOf(noun: string, row: JournalSeen['before']): string {
  const of = (key: string) => String(row?.[key] ?? '')
  if (noun === 'treatment')
    return ['treatment', of('factorId'), of('skeinId'), of('vesselId'), of('sessionId')].join(' ')
  return noun === 'placement' ? `placement ${of('skeinId')}` : `${noun} ${of('id')}`
}

/**
 * The record as it would stand without those changes: levels, roles, places, stages, sessions and losses as they were when
 * the first reading was written down. Corrections of readings stay: they are listed, and what they replace is never lost.
 */
export function recordWithoutChanges(record: TrialRecord): TrialRecord {
  const rows: Record<string, Map<string, Readonly<Record<string, unknown>>>> = {
    treatment: new Map(record.treatments.map((it) => [it.id, it])),
    placement: new Map(record.places.map((it) => [it.id, it])),
    skein: new Map(record.skeins.map((it) => [it.id, it])),
    vessel: new Map(record.vessels.map((it) => [it.id, it])),
    session: new Map(record.sessions.map((it) => [it.id, it])),
  }
  for (const { noun, recordId, action, before } of [...changesAfterReading(record.journal)].reverse()) {
    const kept = rows[noun]
    if (!kept) continue
    if (action === 'added') kept.delete(recordId)
    // What the record knows beside the row itself (a base’s name, moments as dates) stays; the rest is as it was.
    else if (before) kept.set(recordId, { ...kept.get(recordId), ...before })
  }
  const back = <Row>(noun: string) => [...(rows[noun]?.values() ?? [])] as Row[]
  const trial = [...changesAfterReading(record.journal)].find(({ noun }) => noun === 'trial')?.before
  return {
    ...record,
    trial: trial
      ? { ...record.trial, block: (trial.block ?? record.trial.block) as typeof record.trial.block }
      : record.trial,
    treatments: back<TrialRecord['treatments'][number]>('treatment'),
    places: back<TrialRecord['places'][number]>('placement'),
    skeins: back<TrialRecord['skeins'][number]>('skein'),
    vessels: back<TrialRecord['vessels'][number]>('vessel'),
    sessions: back<TrialRecord['sessions'][number]>('session'),
    journal: [],
  }
}

/** A change as a finding and a sheet list it. */
export function changeInWords({ noun, action, at, who, why }: JournalSeen): string {
  const what = { added: 'given anew', changed: 'changed', removed: 'removed', corrected: 'corrected' }[action]
  return `${day(at)}: ${noun} ${what}${who === null ? '' : ` by ${who}`}${why === null ? ', no reason given' : `: ${why}`}.`
}

/** How many, in one sentence. */
export function changesInWords(changes: readonly JournalSeen[]): string {
  const one = { one: 'change', many: 'changes' }
  return `${counted(changes.length, one)} of what is judged ${changes.length === 1 ? 'was' : 'were'} made after the first reading.`
}
