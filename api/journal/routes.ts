import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { JournalPage } from '#api/contract/journal.ts'
import { oneId } from '#api/contract/one-or-many.ts'
import { listQuery } from '#api/contract/quantity.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { journalOf } from '#db/journal.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'

const listed = createRoute({
  method: 'get',
  path: '/{id}/journal',
  tags: ['journal'],
  summary: 'What was changed of what is judged after the first reading, oldest first',
  request: { params: oneId, query: listQuery },
  responses: { 200: json(JournalPage, 'A page'), ...answersProblem('not-found', 'at-fault') },
})

/** `/api/trials/{id}/journal`. */
export function journalRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(listed, async (c) => {
    const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
    const { rows, next } = await journalOf(db, trial.id, c.req.valid('query'))
    const items = rows.map(({ trialId: _trialId, at, ...row }) => ({ ...row, at: at.toISOString() }))
    return c.json({ from: trial.journalFrom.toISOString(), items, next }, 200)
  })
}
