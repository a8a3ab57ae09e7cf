import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { id } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import type { Database } from '#db/tables.ts'
import { loadExampleStudio } from './load-example-studio.ts'

const opened = createRoute({
  method: 'post',
  path: '/',
  tags: ['example studio'],
  summary: 'Write the example studio, every trial marked invented; to ask twice is harmless',
  responses: { 200: json(z.object({ trialIds: z.array(id) }), 'Its trials, the steam ladder first') },
})

/** `/api/example-studio`. */
export function exampleStudioRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(opened, async (c) => c.json({ trialIds: await loadExampleStudio(db) }, 200))
}

export type ExampleStudioRoutes = ReturnType<typeof exampleStudioRoutes>
