import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import { Finding } from '#api/contract/finding.ts'
import { id } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { WithinLevel } from '#api/contract/within-level.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { theOne } from '#api/records/the-one.ts'
import type { Database } from '#db/tables.ts'
import { declareVerdict } from './declare-verdict.ts'
import { findingOf } from './find.ts'
import { verdictsOfTrial } from './verdicts-of-trial.ts'

const tags = ['findings']
const oneTrial = z.object({ id })

const found = createRoute({
  method: 'get',
  path: '/{id}/findings',
  tags,
  summary: 'What a trial has found under its rule, with interval, counts and cautions',
  request: { params: oneTrial, query: WithinLevel },
  responses: {
    200: json(Finding, 'The finding, worked out now'),
    ...answersProblem('not-found', 'at-fault'),
  },
})
const listed = createRoute({
  method: 'get',
  path: '/{id}/verdicts',
  tags,
  summary: 'Every verdict that was recorded, first look first',
  request: { params: oneTrial },
  responses: {
    200: json(z.object({ items: z.array(DeclaredVerdict) }), 'The verdicts'),
    ...answersProblem('not-found'),
  },
})
const declared = createRoute({
  method: 'post',
  path: '/{id}/verdicts',
  tags,
  summary: 'Record the verdict as it stands; it is kept as the look that it is',
  request: { params: oneTrial, body: { ...json(WithinLevel), required: false } },
  responses: {
    201: json(DeclaredVerdict, 'The verdict as it is kept'),
    200: json(DeclaredVerdict, 'This look was recorded before'),
    ...answersProblem('not-found', 'at-fault'),
  },
})

/** `/api/trials/:id/findings` and `/verdicts`. */
export function findingRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(found, async (c) => {
      const { within } = c.req.valid('query')
      return c.json(await findingOf(db, c.req.valid('param').id, { within }), 200)
    })
    .openapi(listed, async (c) => {
      return c.json({ items: await verdictsOfTrial(db, c.req.valid('param').id) }, 200)
    })
    .openapi(declared, async (c) => {
      const { id: trialId } = c.req.valid('param')
      const { row, made } = await declareVerdict(db, trialId, c.req.valid('json'))
      const kept = theOne(await verdictsOfTrial(db, trialId), row.id)
      return made ? c.json(kept, 201) : c.json(kept, 200)
    })
}

export type FindingRoutes = ReturnType<typeof findingRoutes>
