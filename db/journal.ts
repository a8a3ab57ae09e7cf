import { type Kysely, sql } from 'kysely'
import { trialsOf } from './belonging.ts'
import { newId } from './new-id.ts'
import type { Page } from './rows.ts'
import type { Database, JournalAction } from './tables.ts'

/** One change of what is judged, before it is known which trials have readings already. */
export type Entry = {
  /** The trial that the record is of; null for what trials share. */
  readonly trialId: string | null
  readonly who: string | null
  readonly reason: string | null
  readonly noun: string
  readonly recordId: string
  readonly action: JournalAction
  /** The whole record, as a reply shows it. */
  readonly before: object | null
  readonly after: object | null
  readonly skeinIds: readonly string[]
}

/**
 * Writes changes into the journal of every trial that they touch and that has a reading or an outcome already: the
 * trial of the record, and those of the skeins that hang on it. Call it in the transaction of the change.
 */
export async function keepEntries(tx: Kysely<Database>, entries: readonly Entry[]): Promise<void> {
  if (entries.length === 0) return
  const trials = await trialsOf(
    tx,
    'skein',
    entries.flatMap((entry) => entry.skeinIds),
  )
  const rows = entries.flatMap((entry) => rowsOf(entry, trials))
  const begun = await begunTrials(tx, [...new Set(rows.map((row) => row.trialId))])
  await insertJournal(
    tx,
    rows.filter((row) => begun.has(row.trialId)),
  )
}

type JournalRow = Omit<Entry, 'trialId'> & { readonly trialId: string }

/** An entry for each trial that it touches, with the skeins of that trial. */
function rowsOf(entry: Entry, trials: ReadonlyMap<string, string | null>): JournalRow[] {
  const byTrial = new Map<string, string[]>()
  if (entry.trialId !== null) byTrial.set(entry.trialId, [])
  for (const skeinId of entry.skeinIds) {
    const trialId = trials.get(skeinId) ?? entry.trialId
    if (trialId !== null) byTrial.set(trialId, [...(byTrial.get(trialId) ?? []), skeinId])
  }
  return [...byTrial].map(([trialId, skeinIds]) => ({ ...entry, trialId, skeinIds }))
}

/** Which of these trials have a current reading, or a current outcome of a skein or of a vessel that it lay in. */
export async function begunTrials(
  db: Kysely<Database>,
  trialIds: readonly string[],
): Promise<ReadonlySet<string>> {
  if (trialIds.length === 0) return new Set()
  const { rows } = await sql<{
    id: string
  }>`select t.id from trial t where t.id = any(${[...trialIds]}::uuid[]) and (
      exists (select from skein k join reading r on r.skein_id = k.id where k.trial_id = t.id and not r.superseded)
      or exists (select from skein k join outcome o on o.skein_id = k.id where k.trial_id = t.id and not o.superseded)
      or exists (select from skein k join placement p on p.skein_id = k.id join outcome o on o.vessel_id = p.vessel_id
        where k.trial_id = t.id and not o.superseded)
      or exists (select from session s join vessel v on v.session_id = s.id join outcome o on o.vessel_id = v.id
        where s.trial_id = t.id and not o.superseded))`.execute(db)
  return new Set(rows.map((row) => row.id))
}

const atOnce = 2000

async function insertJournal(tx: Kysely<Database>, rows: readonly JournalRow[]): Promise<void> {
  for (let from = 0; from < rows.length; from += atOnce) {
    const body = JSON.stringify(
      rows.slice(from, from + atOnce).map((row) => ({
        id: newId(),
        trial_id: row.trialId,
        who: row.who,
        why: row.reason,
        noun: row.noun,
        record_id: row.recordId,
        action: row.action,
        before: row.before,
        after: row.after,
        skein_ids: row.skeinIds,
      })),
    )
    // A change of one record waits for the one before it: so the clock, not the beginning of the transaction, orders them.
    await sql`insert into journal (id, trial_id, at, who, why, noun, record_id, action, before, after, skein_ids)
      select it.id, it.trial_id, clock_timestamp(), it.who, it.why, it.noun, it.record_id, it.action,
        nullif(it.before, 'null'), nullif(it.after, 'null'), it.skein_ids
      from jsonb_populate_recordset(null::journal, ${body}::jsonb) it`.execute(tx)
  }
}

/** A page of the journal of a trial, oldest first. */
export async function journalOf(db: Kysely<Database>, trialId: string, { limit, after }: Page) {
  let query = db.selectFrom('journal').selectAll().where('trialId', '=', trialId)
  if (after)
    query = query.where(
      sql<boolean>`(at, id) > (select at, id from journal where id = ${after} and trial_id = ${trialId})`,
    )
  const rows = await query
    .orderBy('at')
    .orderBy('id')
    .limit(limit + 1)
    .execute()
  return { rows: rows.slice(0, limit), next: rows.length > limit ? (rows[limit - 1]?.id ?? null) : null }
}
