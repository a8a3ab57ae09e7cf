import { createRoute } from '@hono/zod-openapi'
import { type Kysely, sql } from 'kysely'
import { z } from '#api/contract/schema.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import type { Database } from '#db/tables.ts'

const healthy = createRoute({
  method: 'get',
  path: '/',
  tags: ['health'],
  summary: 'Does the tool serve?',
  responses: { 200: json(z.object({ ok: z.literal(true) }), 'It serves, and the database answers') },
})

/** `GET /api/health`: 200 once the tool serves and its database answers. */
export function healthRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(healthy, async (c) => {
    await sql`select 1`.execute(db)
    return c.json({ ok: true as const }, 200)
  })
}
