import type { Kysely } from 'kysely'
import type { Database, Role } from './tables.ts'

export type DrawnVesselRow = {
  readonly id: string
  readonly sessionId: string
  readonly label: string
  readonly kind: 'pot' | 'jar' | 'packet' | 'tray' | 'bowl' | 'card'
  readonly place: string | null
  readonly drawnOrder: number | null
}
export type DrawnSkeinRow = {
  readonly id: string
  readonly vesselId: string
  readonly code: string
  readonly role: Role
  readonly place: string | null
  /** The skein that was given the level: itself, or what it was cut from. */
  readonly given: string | null
}
export type DrawnLevelRow = {
  readonly levelId: string
  readonly label: string
  readonly unit: string | null
  readonly vesselId: string | null
  readonly skeinId: string | null
}
export type DrawnSessionRow = {
  readonly id: string
  readonly label: string
  readonly kind: 'stove' | 'bench' | 'wash' | 'contact' | 'rub' | 'light' | 'remedy'
  readonly heldOn: string | null
}

/** The bench of a trial: sessions with the vessels to which (or to whose skeins) a level is given. */
export async function benchOf(db: Kysely<Database>, trialId: string) {
  const given = await db
    .selectFrom('treatment')
    .innerJoin('level', 'level.id', 'treatment.levelId')
    .innerJoin('factor', 'factor.id', 'treatment.factorId')
    .select([
      'treatment.levelId',
      'level.label',
      'factor.unit',
      'factor.stage',
      'treatment.vesselId',
      'treatment.skeinId',
    ])
    .where('factor.trialId', '=', trialId)
    .orderBy('factor.createdAt')
    .execute()
  const sessions: DrawnSessionRow[] = await db
    .selectFrom('session')
    .select(['id', 'label', 'kind', 'heldOn'])
    .where('trialId', '=', trialId)
    .orderBy('createdAt')
    .orderBy('id')
    .execute()
  const vessels: DrawnVesselRow[] = await db
    .selectFrom('vessel')
    .innerJoin('session', 'session.id', 'vessel.sessionId')
    .select([
      'vessel.id',
      'vessel.sessionId',
      'vessel.label',
      'vessel.kind',
      'vessel.place',
      'vessel.drawnOrder',
    ])
    .where('session.trialId', '=', trialId)
    .orderBy('vessel.drawnOrder')
    .orderBy('vessel.createdAt')
    .execute()
  const skeins: DrawnSkeinRow[] = await db
    .selectFrom('placement')
    .innerJoin('skein', 'skein.id', 'placement.skeinId')
    .select((is) => [
      'skein.id',
      'placement.vesselId',
      'skein.code',
      'skein.role',
      'placement.place',
      is.fn.coalesce('skein.cutFromId', 'skein.id').as('given'),
    ])
    .where('skein.trialId', '=', trialId)
    .orderBy('placement.createdAt')
    .execute()
  // A twin lies nowhere yet: it is shown where the skein lies that it is cut from.
  const twins: DrawnSkeinRow[] = await db
    .selectFrom('skein')
    .innerJoin('placement', 'placement.skeinId', 'skein.cutFromId')
    .select([
      'skein.id',
      'placement.vesselId',
      'skein.code',
      'skein.role',
      'placement.place',
      'skein.cutFromId as given',
    ])
    .where('skein.trialId', '=', trialId)
    .where('skein.role', '=', 'twin')
    .where((is) =>
      is.not(
        is.exists(
          is.selectFrom('placement as own').select('own.id').whereRef('own.skeinId', '=', 'skein.id'),
        ),
      ),
    )
    .orderBy('skein.createdAt')
    .execute()
  const { results, first } = await db
    .selectFrom('result')
    .select((is) => [
      is.cast<number>(is.fn.countAll(), 'int4').as('results'),
      is.fn.min('firstRecordedAt').as('first'),
    ])
    .where('trialId', '=', trialId)
    .executeTakeFirstOrThrow()
  return {
    sessions,
    vessels,
    skeins: [...skeins, ...twins],
    given: given as DrawnLevelRow[],
    results,
    first: first as Date | null,
  }
}

/** How many sessions of the trial were drawn already: those with a place. */
export async function drawnSessions(db: Kysely<Database>, trialId: string): Promise<string[]> {
  const rows = await db
    .selectFrom('session')
    .select('session.label')
    .where('session.trialId', '=', trialId)
    .where((is) =>
      is.exists(
        is
          .selectFrom('vessel')
          .innerJoin('placement', 'placement.vesselId', 'vessel.id')
          .select('vessel.id')
          .whereRef('vessel.sessionId', '=', 'session.id'),
      ),
    )
    .where('session.kind', 'not in', ['wash', 'contact', 'rub'])
    .orderBy('session.createdAt')
    .execute()
  return rows.map(({ label }) => label)
}
