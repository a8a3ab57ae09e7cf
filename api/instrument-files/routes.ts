import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { InstrumentFileCheck, InstrumentFileKept, NewInstrumentFile } from '#api/contract/instrument-file.ts'
import { id } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { checkInstrumentFile, keepInstrumentFile } from './keep-instrument-file.ts'

const sent = createRoute({
  method: 'post',
  path: '/{id}/instrument-file',
  tags: ['readings'],
  summary:
    'Keep the readings of an instrument’s file (CGATS.17 or CSV); with ?check=true only say what is wrong with it',
  request: {
    params: z.object({ id }),
    query: z.object({ check: z.enum(['true', 'false']).optional() }),
    body: json(NewInstrumentFile),
  },
  responses: {
    200: json(InstrumentFileCheck, 'The check alone; nothing is stored'),
    201: json(InstrumentFileKept, 'What was kept'),
    ...answersProblem(
      'malformed-json',
      'not-found',
      'already-there',
      'too-large',
      'wrong-media-type',
      'at-fault',
    ),
  },
})

/** `/api/trials/:id/instrument-file`. */
export function instrumentFileRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(sent, async (c) => {
    const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
    const file = c.req.valid('json')
    if (c.req.valid('query').check !== 'true') return c.json(await keepInstrumentFile(db, trial, file), 201)
    const { bySkein: _, ...check } = await checkInstrumentFile(db, trial, file.text)
    return c.json(check, 200)
  })
}

export type InstrumentFileRoutes = ReturnType<typeof instrumentFileRoutes>
