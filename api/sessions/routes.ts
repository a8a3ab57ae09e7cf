import type { Kysely } from 'kysely'
import { ChangedSession, NewSession, Session } from '#api/contract/session.ts'
import { NewVessel, Vessel } from '#api/contract/vessel.ts'
import { changedConditions } from '#api/records/changed.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { recordRoutes } from '#api/records/record-routes.ts'
import { addVessels } from '#api/vessels/add-vessels.ts'
import { presentVessel } from '#api/vessels/present-vessel.ts'
import { skeinsIn } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import type { Database } from '#db/tables.ts'
import { addSessions } from './add-sessions.ts'
import { presentSession } from './present-session.ts'

/** `/api/trials/{id}/sessions`. */
export function trialSessionRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/sessions',
    owner: 'trial',
    table: 'session',
    noun: 'session',
    plural: 'sessions',
    whole: 'sessions of a trial',
    sent: NewSession,
    shown: Session,
    present: presentSession,
    write: (tx, trial, items, adding) => addSessions(tx, trial.id, items, adding),
  })
}

/** `/api/sessions/{id}/vessels`. */
export function sessionVesselRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/vessels',
    owner: 'session',
    table: 'vessel',
    noun: 'vessel',
    plural: 'vessels',
    whole: 'vessels of a session',
    sent: NewVessel,
    shown: Vessel,
    present: presentVessel,
    write: (tx, session, items, adding) =>
      addVessels(
        tx,
        session.trialId,
        items.map((item) => ({ ...item, sessionId: session.id })),
        adding,
      ),
  })
}

/** `/api/sessions/{id}`. */
export function sessionRoutes(db: Kysely<Database>) {
  return recordRoutes(db, {
    table: 'session',
    noun: 'session',
    plural: 'sessions',
    changed: ChangedSession,
    shown: Session,
    present: presentSession,
    prepare: async (tx, before, sent, doubts) => ({
      ...sent,
      ...(await changedConditions(tx, before.trialId, sent, doubts)),
    }),
    keep: (tx, { id }) =>
      refuseIfMeasured(tx, { sessionId: id }, 'Something was recorded in this session, so it stays.'),
    touched: (tx, { id }) => skeinsIn(tx, { sessionIds: [id] }),
  })
}

export type TrialSessionRoutes = ReturnType<typeof trialSessionRoutes>
export type SessionVesselRoutes = ReturnType<typeof sessionVesselRoutes>
export type SessionRoutes = ReturnType<typeof sessionRoutes>
