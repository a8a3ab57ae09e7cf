import type { Kysely } from 'kysely'
import { session } from '#api/contract/session.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addFree, addTo } from '#api/records/add.ts'
import { addressesOf, addressesUnder, changesOf, freeAddresses } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { conditionsChecked } from '#api/records/conditions-checked.ts'
import { listOf, listWhole } from '#api/records/list.ts'
import { freeNoun, plainNoun } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { skeinsIn } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import type { Database } from '#db/tables.ts'
import { addSessions } from './add-sessions.ts'

/** Occasions that hold all or many treatments of a trial. */
export const sessions = plainNoun({
  table: 'session',
  noun: 'session',
  plural: 'sessions',
  measured: false,
  ...session,
  present: presentPlain(session),
  owner: 'trial',
  whole: 'sessions of a trial',
  add: (tx, trial, items, adding) => addSessions(tx, trial.id, items, adding),
  // Nothing lies in a new session yet.
  derive: async () => {},
  prepare: (tx, before, sent, doubts) => conditionsChecked(tx, before.trialId, sent, doubts),
  keep: (tx, { id }) =>
    refuseIfMeasured(tx, { sessionId: id }, 'Something was recorded in this session, so it stays.'),
  touches: (tx, rows) => skeinsIn(tx, { sessionIds: rows.map((row) => row.id) }),
  judged: { but: ['label', 'note'], of: ({ trialId }) => ({ table: 'trial', id: trialId }) },
})

/** A wash day or a window that holds pieces of several trials belongs to none of them. */
export const sharedSessions = freeNoun({
  ...sessions,
  add: (tx, _none, items, adding) => addSessions(tx, null, items, adding),
})

const under = addressesUnder('/{id}/sessions', sessions)
const at = { ...addressesOf(sessions), ...changesOf(sessions) }

/** `/api/trials/{id}/sessions`. */
export function trialSessionRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, sessions)).openapi(under.added, addTo(db, sessions))
}

const shared = freeAddresses(sharedSessions, {
  listed: 'The sessions that trials share: wash days, windows',
  added: 'Add a session that trials share, or several',
})

/** `/api/sessions`. */
export function sharedSessionRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(shared.all, listWhole(db, sharedSessions, 'shared sessions'))
    .openapi(shared.added, addFree(db, sharedSessions))
}

/** `/api/sessions/{id}`. */
export function sessionRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(at.one, showOne(db, sessions))
    .openapi(at.changed, changeOne(db, sessions))
    .openapi(at.removed, removeOne(db, sessions))
}
