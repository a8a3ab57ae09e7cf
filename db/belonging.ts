import { type Kysely, sql } from 'kysely'
import { mostFaults } from '#api/contract/faults.ts'
import { type Fault, Problem } from '#api/contract/problem.ts'
import type { Database } from './tables.ts'

/** Where the trial of a row is found, and the word for it in a sentence. */
const owners = {
  skein: { noun: 'skein', query: sql`select id, trial_id from skein` },
  session: { noun: 'session', query: sql`select id, trial_id from session` },
  sitting: { noun: 'sitting', query: sql`select id, trial_id from sitting` },
  vessel: {
    noun: 'vessel',
    query: sql`select vessel.id, session.trial_id from vessel join session on session.id = vessel.session_id`,
  },
  level: {
    noun: 'level',
    query: sql`select level.id, factor.trial_id from level join factor on factor.id = level.factor_id`,
  },
  base: { noun: 'base', query: sql`select id, null::uuid as trial_id from base` },
  dye: { noun: 'dye', query: sql`select id, null::uuid as trial_id from dye` },
  stock: { noun: 'stock', query: sql`select id, null::uuid as trial_id from stock` },
  instrument: { noun: 'instrument', query: sql`select id, null::uuid as trial_id from instrument` },
  recipe: { noun: 'recipe', query: sql`select id, null::uuid as trial_id from recipe` },
  trial: { noun: 'trial', query: sql`select id, id as trial_id from trial` },
} as const

export type Owned = keyof typeof owners
/** Something that a sent row names: of which table, under which id, and where that was written. */
export type Named = {
  readonly table: Owned
  readonly id: string | null | undefined
  readonly pointer: string
}

/** The trial of each of these rows (null: shared by trials); an id that is not there is missing from the map. */
export async function trialsOf(
  db: Kysely<Database>,
  table: Owned,
  ids: readonly string[],
): Promise<Map<string, string | null>> {
  if (ids.length === 0) return new Map()
  const { rows } = await sql<{ id: string; trialId: string | null }>`select * from (${owners[table].query}) it
    where it.id = any(${[...new Set(ids)]}::uuid[])`.execute(db)
  return new Map(rows.map(({ id, trialId }) => [id, trialId]))
}

/**
 * Refuses what names nothing, and what belongs to another trial. What belongs to no trial (a shared wash day, a kept
 * standard, a base) may be named by any; a row of no trial names only what is shared.
 */
export async function refuseStrangers(
  db: Kysely<Database>,
  trialId: string | null | undefined,
  named: readonly Named[],
): Promise<void> {
  const faults: Fault[] = []
  for (const table of new Set(named.map((it) => it.table))) {
    const here = named.filter((it) => it.table === table && it.id)
    const trials = await trialsOf(
      db,
      table,
      here.map((it) => it.id as string),
    )
    const { noun } = owners[table]
    for (const { id, pointer } of here) {
      const owner = trials.get(id as string)
      if (owner === undefined) faults.push({ pointer, detail: `There is no ${noun} under this id.` })
      else if (trialId !== undefined && owner !== null && owner !== trialId)
        faults.push({ pointer, detail: `This ${noun} belongs to another trial.` })
    }
  }
  if (faults.length === 0) return
  const strangers = faults.some((fault) => fault.detail.includes('another trial'))
  throw new Problem(
    'at-fault',
    strangers ? 'Records of two trials cannot be mixed.' : 'This names something that is not there.',
    faults.slice(0, mostFaults),
  )
}
