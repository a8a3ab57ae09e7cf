import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { DrawnPlan, DrawPlaces, PlanTried, TriedPlan } from '#api/contract/plan.ts'
import { id } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { saidIn, saidParameters } from '#api/records/said.ts'
import { benchOf } from '#db/plans.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { answerPlan } from './answer-plan.ts'
import { drawPlan } from './draw-plan.ts'
import { presentPlan } from './present-plan.ts'

const tags = ['plan']
const oneTrial = z.object({ id })

const shown = createRoute({
  method: 'get',
  path: '/{id}/plan',
  tags,
  summary: 'The bench as it was drawn',
  request: { params: oneTrial },
  responses: {
    200: json(DrawnPlan, 'Sessions with their vessels, places in order'),
    ...answersProblem('not-found'),
  },
})
const tried = createRoute({
  method: 'post',
  path: '/{id}/plan',
  tags,
  summary: 'Count a plan and try it: how often would it answer rightly?',
  description: 'Writes nothing. The chances come from invented trials, judged as a real one is, seeded.',
  request: { params: oneTrial, body: json(TriedPlan) },
  responses: {
    200: json(PlanTried, 'What it counts, and how often it says “holds”'),
    ...answersProblem('malformed-json', 'not-found', 'at-fault'),
  },
})
const drawn = createRoute({
  method: 'post',
  path: '/{id}/plan/draw',
  tags,
  parameters: saidParameters,
  summary: 'Draw the places by lot, and write the planned sessions',
  request: { params: oneTrial, body: json(DrawPlaces) },
  responses: {
    201: json(DrawnPlan, 'The bench as it was drawn'),
    ...answersProblem('malformed-json', 'not-found', 'already-there', 'at-fault'),
  },
})

/** `/api/trials/{id}/plan`: what a plan counts and would answer, and the drawing of places. */
export function planRoutes(db: Kysely<Database>) {
  const seen = async (trialId: string): Promise<DrawnPlan> => {
    const trial = await theRow(db, 'trial', trialId, 'trial')
    return presentPlan(await benchOf(db, trialId), trial.seed)
  }
  return newRoutes()
    .openapi(shown, async (c) => c.json(await seen(c.req.valid('param').id), 200))
    .openapi(tried, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      return c.json(await answerPlan(db, trial, c.req.valid('json')), 200)
    })
    .openapi(drawn, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      await drawPlan(db, trial, c.req.valid('json'), saidIn(c))
      return c.json(await seen(trial.id), 201)
    })
}

export type PlanRoutes = ReturnType<typeof planRoutes>
