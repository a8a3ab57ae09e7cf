import { type Kysely, sql } from 'kysely'
import { type Fault, Problem } from '#api/contract/problem.ts'
import type { Database } from '#db/tables.ts'
import { type Adding, inItems, refuseFaults } from './adding.ts'

type Measured = 'reading' | 'outcome' | 'rinse' | 'stamp' | 'exposure'
type Correcting = {
  readonly id?: string | undefined
  readonly supersedesId?: string | null | undefined
  readonly supersedes?: string | null | undefined
  readonly reason?: string | null | undefined
}

/** What must stay the same in a correction: else it is another record, and the first one is still to be mended. */
const subjects: Record<Measured, readonly string[]> = {
  reading: ['skeinId'],
  outcome: ['skeinId', 'vesselId', 'kind'],
  rinse: ['skeinId', 'vesselId'],
  stamp: ['sessionId'],
  exposure: ['vesselId'],
}

/** `supersedes` and `supersedesId` are one thing; the row that is written has the second alone. */
export function correctionOf<Item extends Correcting>(item: Item) {
  const { supersedes, supersedesId, reason, ...rest } = item
  return { ...rest, supersedesId: supersedesId ?? supersedes ?? null, reason: reason ?? null }
}

/**
 * Marks what these rows correct, before they are written. Refused without a reason, of another subject, of what is not
 * there, and of what was corrected already.
 */
export async function supersede(
  tx: Kysely<Database>,
  table: Measured,
  rows: readonly ReturnType<typeof correctionOf>[],
  { at = inItems }: Adding = {},
): Promise<void> {
  const corrected = rows.flatMap((row, index) =>
    row.supersedesId ? [{ row, index, id: row.supersedesId }] : [],
  )
  const faults: Fault[] = []
  for (const { row, index } of corrected) {
    if (!row.reason) faults.push({ pointer: `${at(index)}/reason`, detail: 'A correction says why.' })
  }
  refuseFaults(faults)
  if (corrected.length === 0) return
  const ids = corrected.map((it) => it.id)
  const { rows: before } = await sql<Record<string, unknown>>`select it.*,
      (select later.id from ${sql.table(table)} later where later.supersedes_id = it.id) as later_id
    from ${sql.table(table)} it where it.id = any(${ids}::uuid[]) order by it.id for update`.execute(tx)
  const byId = new Map(before.map((row) => [row.id, row]))
  const twice = new Set<string>()
  for (const { row, index, id } of corrected) {
    const old = byId.get(id)
    const pointer = `${at(index)}/supersedesId`
    if (!old) faults.push({ pointer, detail: 'There is nothing under this id to correct.' })
    else if (twice.has(id)) faults.push({ pointer, detail: 'This is corrected twice here.' })
    else if (old.laterId && old.laterId !== row.id) {
      throw new Problem('already-there', 'This was already corrected. Correct the correction instead.', [
        { pointer, detail: `It was corrected by ${String(old.laterId)}.` },
      ])
    } else {
      const other = subjects[table].find(
        (key) => ((row as Record<string, unknown>)[key] ?? null) !== old[key],
      )
      if (other)
        faults.push({ pointer: `${at(index)}/${other}`, detail: 'A correction is of the same thing.' })
    }
    twice.add(id)
  }
  refuseFaults(faults)
  await sql`update ${sql.table(table)} set superseded = true where id = any(${ids}::uuid[])`.execute(tx)
}
