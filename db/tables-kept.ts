import type { Kysely, Selectable } from 'kysely'
import type { Database, Stage, TableImportTable } from './tables.ts'

export type ImportRow = Selectable<TableImportTable>

/** The last table that was kept in a trial, with its map. */
export async function lastImport(db: Kysely<Database>, trialId: string): Promise<ImportRow | undefined> {
  return db
    .selectFrom('tableImport')
    .selectAll()
    .where('trialId', '=', trialId)
    .orderBy('createdAt', 'desc')
    .limit(1)
    .executeTakeFirst()
}

/** The names under which a table may speak of what a trial has already. */
export async function namesIn(db: Kysely<Database>, trialId: string) {
  const sessions = await db
    .selectFrom('session')
    .select(['id', 'kind', 'label'])
    .where('trialId', '=', trialId)
    .execute()
  const skeins = await db
    .selectFrom('skein')
    .select(['id', 'code', 'role'])
    .where('trialId', '=', trialId)
    .execute()
  const bases = await db.selectFrom('base').select(['id', 'name']).orderBy('createdAt', 'desc').execute()
  return { sessions, skeins, bases }
}

/** Every skein of a trial that is a row of its table, with where it lay and what it was given. */
export async function piecesOf(db: Kysely<Database>, trialId: string) {
  const skeins = await db
    .selectFrom('skein')
    .leftJoin('base', 'base.id', 'skein.baseId')
    .select([
      'skein.id',
      'skein.code',
      'skein.role',
      'skein.cutFromId',
      'skein.massG',
      'skein.status',
      'skein.lostReason',
      'skein.conditions',
      'base.name as base',
    ])
    .where('skein.trialId', '=', trialId)
    .orderBy('skein.createdAt')
    .orderBy('skein.id')
    .execute()
  const placements = await db
    .selectFrom('placement')
    .innerJoin('vessel', 'vessel.id', 'placement.vesselId')
    .innerJoin('session', 'session.id', 'vessel.sessionId')
    .innerJoin('skein', 'skein.id', 'placement.skeinId')
    .select([
      'placement.skeinId',
      'placement.place',
      'vessel.id as vesselId',
      'vessel.stage',
      'vessel.label as vessel',
      'vessel.equipment',
      'vessel.place as vesselPlace',
      'session.id as sessionId',
      'session.label as session',
      'session.kind as sessionKind',
    ])
    .where('skein.trialId', '=', trialId)
    .execute()
  const treatments = await db
    .selectFrom('treatment')
    .innerJoin('level', 'level.id', 'treatment.levelId')
    .innerJoin('factor', 'factor.id', 'treatment.factorId')
    .select([
      'treatment.vesselId',
      'treatment.skeinId',
      'treatment.sessionId',
      'factor.key as factor',
      'factor.stage',
      'level.label',
      'level.value',
    ])
    .where('factor.trialId', '=', trialId)
    .execute()
  const readings = await db
    .selectFrom('reading')
    .innerJoin('skein', 'skein.id', 'reading.skeinId')
    .innerJoin('sitting', 'sitting.id', 'reading.sittingId')
    .select([
      'reading.skeinId',
      'reading.wear',
      'reading.meanL',
      'reading.meanA',
      'reading.meanB',
      'sitting.label as sitting',
    ])
    .where('skein.trialId', '=', trialId)
    .where('reading.superseded', '=', false)
    .orderBy('reading.createdAt')
    .execute()
  const outcomes = await db
    .selectFrom('outcome')
    .leftJoin('skein', 'skein.id', 'outcome.skeinId')
    .leftJoin('vessel', 'vessel.id', 'outcome.vesselId')
    .leftJoin('session', 'session.id', 'vessel.sessionId')
    .select([
      'outcome.skeinId',
      'outcome.vesselId',
      'outcome.kind',
      'outcome.fibre',
      'outcome.value',
      'outcome.text',
      'outcome.wear',
    ])
    .where((is) => is.or([is('skein.trialId', '=', trialId), is('session.trialId', '=', trialId)]))
    .where('outcome.superseded', '=', false)
    .execute()
  return {
    skeins,
    placements,
    treatments: treatments as ((typeof treatments)[number] & { stage: Stage })[],
    readings,
    outcomes,
  }
}

export type Pieces = Awaited<ReturnType<typeof piecesOf>>
