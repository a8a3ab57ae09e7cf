import { createRoute } from '@hono/zod-openapi'
import { type Kysely, sql } from 'kysely'
import { z } from '#api/contract/schema.ts'
import { askAgain, ProblemSchema } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { refusalByDatabase } from '#db/failures.ts'
import type { Database } from '#db/tables.ts'

const Unwell = ProblemSchema.extend({ parts: z.object({ database: z.enum(['away', 'busy']) }) })

const healthy = createRoute({
  method: 'get',
  path: '/',
  tags: ['health'],
  summary: 'Does the tool serve?',
  responses: {
    200: json(z.object({ ok: z.literal(true) }), 'It serves, and the database answers'),
    503: {
      description: 'It serves, and a part of it does not answer: which, and why',
      content: { 'application/problem+json': { schema: Unwell } },
    },
  },
})

/** `GET /api/health`: 200 once the tool serves and its database answers; 503 with the part that does not. */
export function healthRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(healthy, async (c) => {
    try {
      await sql`select 1`.execute(db)
    } catch (error) {
      const refused = refusalByDatabase(error)
      if (!refused) throw error
      const { type, title, status, detail } = refused.body
      const database = refused.problem === 'busy' ? ('busy' as const) : ('away' as const)
      const headers = { 'Content-Type': 'application/problem+json', ...askAgain }
      return c.json({ type, title, status, detail, parts: { database } }, 503, headers)
    }
    return c.json({ ok: true as const }, 200)
  })
}
