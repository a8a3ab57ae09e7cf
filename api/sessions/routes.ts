import type { Kysely, Selectable } from 'kysely'
import { type Doubt, sentAs } from '#api/contract/one-or-many.ts'
import { listQuery } from '#api/contract/quantity.ts'
import { ChangedSession, NewSession, Session } from '#api/contract/session.ts'
import { NewVessel, Vessel } from '#api/contract/vessel.ts'
import { newRoutes } from '#api/http/routes.ts'
import { adding, listing } from '#api/records/addresses.ts'
import { changedConditions } from '#api/records/changed.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { keptAs } from '#api/records/kept.ts'
import { recordRoutes } from '#api/records/record-routes.ts'
import { addVessels } from '#api/vessels/add-vessels.ts'
import { presentVessel } from '#api/vessels/present-vessel.ts'
import { skeinsIn } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import { pageOf } from '#db/pages.ts'
import type { Database, SessionTable } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
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

const shared = { tags: ['sessions'], where: {}, shown: Session }
const sharedListed = listing('/', {
  ...shared,
  summary: 'The sessions that trials share: wash days, windows',
  query: listQuery,
})
const sharedAdded = adding('/', {
  ...shared,
  summary: 'Add a session that trials share, or several',
  sent: NewSession,
})

/** `/api/sessions`: a wash day or a window that holds pieces of several trials belongs to none of them. */
export function sharedSessionRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(sharedListed, async (c) => {
      const page = await pageOf<Selectable<SessionTable>>(db, 'shared sessions', '', c.req.valid('query'))
      return c.json({ items: page.rows.map(presentSession), next: page.next }, 200)
    })
    .openapi(sharedAdded, async (c) => {
      const sent = sentAs(c.req.valid('json'))
      const { rows, madeN, doubts } = await writing(db, async (tx) => {
        const doubts: Doubt[] = []
        return { ...(await addSessions(tx, null, sent.items, { at: sent.at, doubts })), doubts }
      })
      const kept = keptAs(sent, { rows, doubts }, presentSession)
      return madeN > 0 ? c.json(kept, 201) : c.json(kept, 200)
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
export type SharedSessionRoutes = ReturnType<typeof sharedSessionRoutes>
export type SessionRoutes = ReturnType<typeof sessionRoutes>
