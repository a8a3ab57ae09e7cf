import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { faultsOf } from '#api/contract/faults.ts'
import { Problem } from '#api/contract/problem.ts'
import { id } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { type Column, NewTable, TableCheck, TableKept, TableProgress } from '#api/contract/table.ts'
import { wear } from '#api/contract/wear.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { type Said, saidIn, saidParameters } from '#api/records/said.ts'
import { knownPieces } from '#db/known-pieces.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { lastImport, namesIn, piecesOf } from '#db/tables-kept.ts'
import { factorsOf } from '#db/trials.ts'
import { checkTable, presentCheck } from './check-table.ts'
import { keepTable, makesOf } from './keep-table.ts'
import { progressOf } from './progress.ts'
import { writeTable } from './write-table.ts'

const tags = ['table']
const oneTrial = z.object({ id })

const written = createRoute({
  method: 'get',
  path: '/{id}/table',
  tags,
  summary: 'The pieces of a trial as CSV, in the columns of the map that brought them in',
  request: { params: oneTrial },
  responses: {
    200: { description: 'CSV, units in the headings', content: { 'text/csv': { schema: z.string() } } },
    ...answersProblem('not-found'),
  },
})

const sent = createRoute({
  method: 'post',
  path: '/{id}/table',
  tags,
  parameters: saidParameters,
  summary: 'Keep a table, pasted or as CSV; with ?check=true only say what is wrong with it',
  request: {
    params: oneTrial,
    query: z.object({ check: z.enum(['true', 'false']).optional() }),
    body: json(NewTable),
  },
  responses: {
    200: json(TableCheck, 'The check alone; nothing is stored'),
    201: json(TableKept, 'What was kept'),
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

const asked = createRoute({
  method: 'get',
  path: '/{id}/table/{importId}/progress',
  tags,
  summary: 'How far a table is that is being kept',
  request: { params: z.object({ id, importId: id }) },
  responses: { 200: json(TableProgress, 'How far it is'), ...answersProblem('not-found') },
})

/** `/api/trials/:id/table`: table in, table out. */
export function tableRoutes(db: Kysely<Database>) {
  const keep = async (trialId: string, table: NewTable, check: boolean, said: Said) => {
    const trial = await theRow(db, 'trial', trialId, 'trial')
    if (!check) return { kept: await keepTable(db, trial, table, said) }
    const names = await namesIn(db, trial.id)
    const checked = await checkTable(table, {
      factors: await factorsOf(db, trial.id),
      taken: new Set(names.skeins.map((skein) => skein.code)),
      known: (codes) => knownPieces(db, trial.id, codes),
    })
    return { checked: presentCheck(checked, makesOf(checked, trial, table, names)) }
  }
  const routes = newRoutes()
  // The same address takes CSV itself: the map is guessed, the answers stand in the query.
  routes.post('/:id/table', async (c, next) => {
    if (!/^text\/(?:csv|tab-separated-values)\b/i.test(c.req.header('content-type') ?? '')) return next()
    const trialId = id.safeParse(c.req.param('id'))
    if (!trialId.success)
      throw new Problem(
        'not-found',
        'There is nothing under this id.',
        faultsOf(trialId.error, ['path', 'id']),
      )
    const table = tableInText(await c.req.text(), c.req.query())
    const { kept, checked } = await keep(trialId.data, table, c.req.query('check') === 'true', saidIn(c))
    return kept ? c.json(kept, 201) : c.json(checked, 200)
  })
  return routes
    .openapi(written, async (c) => {
      const trial = await theRow(db, 'trial', c.req.valid('param').id, 'trial')
      const before = await lastImport(db, trial.id)
      const between = (before?.answers.between ?? {}) as Record<string, number>
      const map = (before?.columns ?? null) as Column[] | null
      const csv = writeTable(await piecesOf(db, trial.id), {
        map,
        between,
        factors: await factorsOf(db, trial.id),
      })
      return c.body(csv, 200, {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': `attachment; filename="trial-${trial.id}.csv"`,
      })
    })
    .openapi(sent, async (c) => {
      const { kept, checked } = await keep(
        c.req.valid('param').id,
        c.req.valid('json'),
        c.req.valid('query').check === 'true',
        saidIn(c),
      )
      return kept ? c.json(kept, 201) : c.json(checked as TableCheck, 200)
    })
    .openapi(asked, async (c) => {
      const progress = progressOf(c.req.valid('param').importId)
      if (!progress) throw new Problem('not-found', 'No table is being kept under this id.')
      return c.json(progress, 200)
    })
}

export type TableRoutes = ReturnType<typeof tableRoutes>

/** `?between=W2:3&ownVessel=true&keep=ready&blankRows=not done`, for those who send a file by a script. */
function tableInText(text: string, query: Record<string, string>): NewTable {
  const between = query.between === undefined ? undefined : wear.safeParse(wearInQuery(query.between))
  if (between && !between.success)
    throw new Problem('at-fault', 'The wear cannot be read.', faultsOf(between.error, ['query', 'between']))
  const parsed = NewTable.safeParse(
    {
      text,
      ...(query.id === undefined ? {} : { id: query.id }),
      ...(between ? { between: between.data } : {}),
      ...(query.ownVessel === undefined ? {} : { ownVessel: query.ownVessel === 'true' }),
      ...(query.otherOrder === undefined ? {} : { otherOrder: query.otherOrder === 'true' }),
      ...(query.keep === undefined ? {} : { keep: query.keep }),
      ...(query.blankRows === undefined ? {} : { blankRows: query.blankRows }),
      ...(query.standard === undefined ? {} : { standard: query.standard }),
      ...(query.twinsAreParts === undefined ? {} : { twinsAreParts: query.twinsAreParts === 'true' }),
    },
    { reportInput: true },
  )
  if (!parsed.success) throw new Problem('at-fault', 'This table cannot be read.', faultsOf(parsed.error))
  return parsed.data
}

function wearInQuery(text: string): Record<string, number> {
  return Object.fromEntries(
    text.split(',').map((part) => {
      const at = part.lastIndexOf(':')
      return [part.slice(0, at).trim(), Number(part.slice(at + 1))]
    }),
  )
}
