import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import { id, listOf, listQuery } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { ChangedTrial, Factor, NewFactor, NewRule, NewTrial, Rule, Trial } from '#api/contract/trial.ts'
import { answersProblem } from '#api/http/problem.ts'
import { ifMatch, json, newRoutes, versionSeen } from '#api/http/routes.ts'
import { conditionsChecked } from '#api/records/conditions-checked.ts'
import { keepChanged } from '#api/records/journal.ts'
import { saidIn, saidParameters } from '#api/records/said.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { skeinsOfTrial } from '#db/losses.ts'
import { changeRow, listRows, removeRow, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { factorsOf, isMeasured, rulesOf } from '#db/trials.ts'
import { addFactor } from './add-factor.ts'
import { addRule, lockRule } from './add-rule.ts'
import { judgedTrial } from './judged-trial.ts'
import { presentFactor, presentRule, presentTrial } from './present-trial.ts'
import { startTrial } from './start-trial.ts'

const tags = ['trials']
const oneTrial = z.object({ id })

const listed = createRoute({
  method: 'get',
  path: '/',
  tags,
  summary: 'The trials, oldest first',
  request: { query: listQuery },
  responses: { 200: json(listOf(Trial), 'A page of trials'), ...answersProblem('at-fault') },
})
const started = createRoute({
  method: 'post',
  path: '/',
  tags,
  summary: 'Start a trial',
  request: { body: json(NewTrial) },
  responses: {
    201: json(Trial, 'The trial as it is kept'),
    200: json(Trial, 'It was already there, the same'),
    ...answersProblem('malformed-json', 'wrong-media-type', 'already-there', 'at-fault'),
  },
})
const shown = createRoute({
  method: 'get',
  path: '/{id}',
  tags,
  summary: 'One trial',
  request: { params: oneTrial },
  responses: { 200: json(Trial, 'The trial'), ...answersProblem('not-found') },
})
const changed = createRoute({
  method: 'patch',
  path: '/{id}',
  tags,
  parameters: saidParameters,
  summary: 'Change a trial that is still at the version you saw',
  request: { params: oneTrial, headers: ifMatch, body: json(ChangedTrial) },
  responses: {
    200: json(Trial, 'The trial as it is now'),
    ...answersProblem('malformed-json', 'not-found', 'changed-meanwhile', 'at-fault', 'version-missing'),
  },
})
const removed = createRoute({
  method: 'delete',
  path: '/{id}',
  tags,
  summary: 'Remove a trial in which nothing was measured; one with measurements is archived instead',
  request: { params: oneTrial, headers: ifMatch },
  responses: {
    204: { description: 'It is gone' },
    ...answersProblem('not-found', 'still-in-use', 'changed-meanwhile', 'version-missing'),
  },
})
const factorsListed = createRoute({
  method: 'get',
  path: '/{id}/factors',
  tags,
  summary: 'What is varied, with the levels tried, least first',
  request: { params: oneTrial },
  responses: {
    200: json(z.object({ items: z.array(Factor) }), 'The factors'),
    ...answersProblem('not-found'),
  },
})
const factorAdded = createRoute({
  method: 'post',
  path: '/{id}/factors',
  tags,
  summary: 'Add a factor with its levels',
  request: { params: oneTrial, body: json(NewFactor) },
  responses: {
    201: json(Factor, 'The factor as it is kept'),
    200: json(Factor, 'It was already there, the same'),
    ...answersProblem('malformed-json', 'not-found', 'already-there', 'at-fault'),
  },
})
const factorRemoved = createRoute({
  method: 'delete',
  path: '/{id}/factors/{factorId}',
  tags,
  summary: 'Remove a factor that no treatment uses yet',
  request: { params: z.object({ id, factorId: id }), headers: ifMatch },
  responses: {
    204: { description: 'It is gone' },
    ...answersProblem('not-found', 'still-in-use', 'changed-meanwhile', 'version-missing'),
  },
})
const rulesListed = createRoute({
  method: 'get',
  path: '/{id}/rules',
  tags,
  summary: 'Every edition of the rule, oldest first',
  request: { params: oneTrial },
  responses: {
    200: json(z.object({ items: z.array(Rule) }), 'The editions'),
    ...answersProblem('not-found'),
  },
})
const ruleAdded = createRoute({
  method: 'post',
  path: '/{id}/rules',
  tags,
  summary: 'Write an edition of the rule; a later one says why',
  request: { params: oneTrial, body: json(NewRule) },
  responses: {
    201: json(Rule, 'The edition as it is kept'),
    200: json(Rule, 'It was already there, the same'),
    ...answersProblem('malformed-json', 'not-found', 'already-there', 'at-fault'),
  },
})
const ruleLocked = createRoute({
  method: 'post',
  path: '/{id}/rules/{edition}/lock',
  tags,
  summary: 'Lock an edition of the rule, for good',
  request: { params: z.object({ id, edition: z.coerce.number().int().min(1).max(10_000) }) },
  responses: { 200: json(Rule, 'The locked edition'), ...answersProblem('not-found', 'rule-locked') },
})

/** `/api/trials`: trials, their factors with levels, the editions of their rules. */
export function trialRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(listed, async (c) => {
      const { rows, next } = await listRows(db, 'trial', c.req.valid('query'))
      return c.json({ items: rows.map(presentTrial), next }, 200)
    })
    .openapi(started, async (c) => {
      const { row, made } = await startTrial(db, c.req.valid('json'))
      return made ? c.json(presentTrial(row), 201) : c.json(presentTrial(row), 200)
    })
    .openapi(shown, async (c) => {
      const row = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      c.header('etag', `"${row.version}"`)
      return c.json(presentTrial(row), 200)
    })
    .openapi(changed, async (c) => {
      const version = versionSeen(c.req.valid('header'))
      const sent = c.req.valid('json')
      const { id } = c.req.valid('param')
      const row = await db.transaction().execute(async (tx) => {
        const before = await theRow(tx, 'trial', id, 'trial')
        const values = await conditionsChecked(tx, id, sent, [])
        const changed = await changeRow(tx, 'trial', id, { version, values, noun: 'trial' })
        if (sent.conditions !== undefined) await deriveResults(tx, await skeinsOfTrial(tx, id))
        const touched = await judgedTrial.touches(tx, [changed])
        await keepChanged(tx, judgedTrial, [before, changed], { said: saidIn(c), touched })
        return changed
      })
      return c.json(presentTrial(row), 200)
    })
    .openapi(removed, async (c) => {
      const version = versionSeen(c.req.valid('header'))
      const { id } = c.req.valid('param')
      if (await isMeasured(db, id)) {
        throw new Problem('still-in-use', 'This trial has measurements, so it stays. Archive it instead.')
      }
      await removeRow(db, 'trial', id, { version, noun: 'trial' })
      return c.body(null, 204)
    })
    .openapi(factorsListed, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      return c.json({ items: (await factorsOf(db, trial.id)).map(presentFactor) }, 200)
    })
    .openapi(factorAdded, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      const { row, made } = await addFactor(db, trial.id, c.req.valid('json'))
      // The stage of the first factor says which session is a skein's main one.
      if (made)
        await db.transaction().execute(async (tx) => deriveResults(tx, await skeinsOfTrial(tx, trial.id)))
      return made ? c.json(presentFactor(row), 201) : c.json(presentFactor(row), 200)
    })
    .openapi(factorRemoved, async (c) => {
      const version = versionSeen(c.req.valid('header'))
      const { id, factorId } = c.req.valid('param')
      const factor = (await factorsOf(db, id)).find((it) => it.id === factorId)
      if (!factor) throw new Problem('not-found', 'This trial has no factor under this id.')
      const used = await db
        .selectFrom('treatment')
        .select('id')
        .where('factorId', '=', factorId)
        .limit(1)
        .execute()
      if (used.length > 0)
        throw new Problem('still-in-use', 'Skeins or vessels have been given this factor, so it stays.')
      await db.transaction().execute(async (tx) => {
        await removeRow(tx, 'factor', factorId, { version, noun: 'factor' })
        await deriveResults(tx, await skeinsOfTrial(tx, id))
      })
      return c.body(null, 204)
    })
    .openapi(rulesListed, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      return c.json({ items: (await rulesOf(db, trial.id)).map(presentRule) }, 200)
    })
    .openapi(ruleAdded, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      const { row, made } = await addRule(db, trial.id, c.req.valid('json'))
      return made ? c.json(presentRule(row), 201) : c.json(presentRule(row), 200)
    })
    .openapi(ruleLocked, async (c) => {
      const { id, edition } = c.req.valid('param')
      await theRow(db, 'trial', id, 'trial')
      return c.json(presentRule(await lockRule(db, id, edition)), 200)
    })
}

export type TrialRoutes = ReturnType<typeof trialRoutes>
