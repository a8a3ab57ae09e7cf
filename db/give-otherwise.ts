import { type Kysely, type Selectable, sql } from 'kysely'
import { theRow } from './rows.ts'
import type { Database, TreatmentTable } from './tables.ts'

/** A skein that was given another level of a factor than the one drawn for it. */
export type GivenOtherwise = { readonly skeinId: string; readonly factorId: string; readonly levelId: string }

type TreatmentRow = Selectable<TreatmentTable>
/** The treatments that were written because the work differed from the plan. */
export type WrittenOtherwise = {
  readonly changed: readonly (readonly [before: TreatmentRow, after: TreatmentRow])[]
  readonly added: readonly TreatmentRow[]
}

type Drawn = {
  readonly id: string
  readonly skeinId: string
  readonly factorId: string
  readonly levelId: string
  readonly drawnLevelId: string | null
  readonly on: 'skein' | 'vessel' | 'session'
  /** How many skeins have their level from this treatment. */
  readonly shared: number
}

/**
 * Gives skeins the level that they really had, and keeps the one that was drawn beside it. A treatment is changed where
 * all that have their level from it had the other one; else each skein gets its own.
 */
export async function giveOtherwise(
  tx: Kysely<Database>,
  trialId: string,
  changes: readonly GivenOtherwise[],
): Promise<WrittenOtherwise> {
  const changed: [TreatmentRow, TreatmentRow][] = []
  const added: TreatmentRow[] = []
  if (changes.length === 0) return { changed, added }
  const drawn = await drawnFor(tx, trialId)
  const nearest = new Map<string, Drawn>()
  for (const it of drawn) {
    const key = `${it.skeinId} ${it.factorId}`
    const before = nearest.get(key)
    if (!before || rank[it.on] < rank[before.on]) nearest.set(key, it)
  }
  const byTreatment = new Map<string, { drawn: Drawn; changes: GivenOtherwise[] }>()
  for (const [key, change] of oncePerSkein(changes)) {
    const it = nearest.get(key)
    if (!it || it.levelId === change.levelId) continue
    const met = byTreatment.get(it.id) ?? { drawn: it, changes: [] }
    met.changes.push(change)
    byTreatment.set(it.id, met)
  }
  for (const { drawn: it, changes: mine } of byTreatment.values()) {
    const drawnLevelId = it.drawnLevelId ?? it.levelId
    const [first] = mine
    const whole = mine.length >= it.shared && mine.every(({ levelId }) => levelId === first?.levelId)
    if (first && whole) {
      const before = await theRow(tx, 'treatment', it.id, 'treatment')
      const after = await tx
        .updateTable('treatment')
        .set((is) => ({ levelId: first.levelId, drawnLevelId, version: is('version', '+', 1) }))
        .where('id', '=', it.id)
        .returningAll()
        .executeTakeFirstOrThrow()
      changed.push([before, after])
      continue
    }
    const own = await tx
      .insertInto('treatment')
      .values(mine.map((change) => ({ ...change, drawnLevelId })))
      .returningAll()
      .execute()
    added.push(...own)
  }
  return { changed, added }
}

/** A skein may stand in several rows of a table, once for each of its readings. */
function oncePerSkein(changes: readonly GivenOtherwise[]): ReadonlyMap<string, GivenOtherwise> {
  return new Map(changes.map((change) => [`${change.skeinId} ${change.factorId}`, change]))
}

const rank = { skein: 0, vessel: 1, session: 2 } as const

/** Every treatment of a trial once for each skein that it reaches: directly, by its vessel, by the vessel’s session. */
async function drawnFor(tx: Kysely<Database>, trialId: string): Promise<readonly Drawn[]> {
  const { rows } = await sql<Drawn>`
    with reached as (
      select t.id, k.id as skein_id, 'skein' as "on" from treatment t join skein k on k.id = t.skein_id
      union select t.id, p.skein_id, 'vessel' from treatment t join placement p on p.vessel_id = t.vessel_id
      union select t.id, p.skein_id, 'session' from treatment t
        join vessel v on v.session_id = t.session_id join placement p on p.vessel_id = v.id
    )
    select t.id, reached.skein_id, t.factor_id, t.level_id, t.drawn_level_id, reached."on",
      (count(*) over (partition by t.id))::int as shared
    from reached join treatment t on t.id = reached.id join factor f on f.id = t.factor_id
    where f.trial_id = ${trialId}`.execute(tx)
  return rows
}
