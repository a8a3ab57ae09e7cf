import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { createRoute } from '@hono/zod-openapi'
import { type Context, Hono } from 'hono'
import type { Kysely } from 'kysely'
import { DraftSheet, EvidenceSheet } from '#api/contract/evidence.ts'
import { Problem } from '#api/contract/problem.ts'
import { id } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { WithinLevel } from '#api/contract/within-level.ts'
import { type Refusal, refusedToRecord } from '#api/findings/declare-verdict.ts'
import { findIn, findParts } from '#api/findings/find.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { pagePolicy } from '#api/http/security-headers.ts'
import { theOne } from '#api/records/the-one.ts'
import { day } from '#api/words/dates.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { trialRecord } from '#db/trial-record.ts'
import { verdictOf } from '#db/verdicts.ts'
import { besideSheet } from './beside-sheet.ts'
import { freezeSheet, refusedToPublish } from './freeze-sheet.ts'
import { sheetCss } from './sheet-css.ts'
import { sheetOf } from './sheet-of-record.ts'
import { sheetPage } from './sheet-page.ts'
import { sheetsOfTrial } from './sheets-of-trial.ts'

const tags = ['evidence']
const oneTrial = z.object({ id })

const listed = createRoute({
  method: 'get',
  path: '/{id}/evidence-sheets',
  tags,
  summary: 'The published sheets of a trial, newest first',
  request: { params: oneTrial },
  responses: {
    200: json(z.object({ items: z.array(EvidenceSheet) }), 'The sheets'),
    ...answersProblem('not-found'),
  },
})
const frozen = createRoute({
  method: 'post',
  path: '/{id}/evidence-sheets',
  tags,
  summary: 'Publish the sheet as it stands: its words, numbers and checksum never change again',
  request: { params: oneTrial, body: { ...json(WithinLevel), required: false } },
  responses: {
    201: json(EvidenceSheet, 'The published sheet'),
    200: json(EvidenceSheet, 'This was published before'),
    ...answersProblem('not-found', 'at-fault'),
  },
})

const drafted = createRoute({
  method: 'get',
  path: '/{id}/evidence-sheets/draft',
  tags,
  summary: 'The sheet of a trial as it stands now, not published',
  request: { params: oneTrial, query: WithinLevel },
  responses: { 200: json(DraftSheet, 'What it would say'), ...answersProblem('not-found', 'at-fault') },
})

/** `/api/trials/:id/evidence-sheets`. */
export function evidenceRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(listed, async (c) => {
      return c.json({ items: await sheetsOfTrial(db, c.req.valid('param').id) }, 200)
    })
    .openapi(drafted, async (c) => {
      const record = await trialRecord(db, c.req.valid('param').id)
      const finding = findIn(record, { ...c.req.valid('query'), alone: true })
      const { verdict } = finding
      const stratum = c.req.valid('query').within ?? ''
      const recorded = verdict
        ? await verdictOf(db, { trialId: record.trial.id, look: verdict.look, stratum })
        : undefined
      const short = (refused: Refusal | undefined) =>
        refused ? { waitsFor: refused.waitsFor, says: refused.says } : null
      const { within: only } = c.req.valid('query')
      const sheet = sheetOf(record, finding, findParts(record, finding, { within: only }))
      const query = only !== undefined && finding.within ? `?within=${finding.within.levelId}` : ''
      return c.json(
        {
          sheet,
          hasVerdict: finding.verdict !== null,
          recordedAt: recorded?.declaredAt.toISOString() ?? null,
          refusedToRecord: short(refusedToRecord(finding)),
          refusedToPublish: short(refusedToPublish(finding, recorded)),
          within: finding.within && {
            factor: finding.within.factor,
            levelId: finding.within.levelId,
            levels: finding.within.levels,
          },
          path: `/sheets/trials/${record.trial.id}${query}`,
        },
        200,
      )
    })
    .openapi(frozen, async (c) => {
      const { id: trialId } = c.req.valid('param')
      const { row, made } = await freezeSheet(db, trialId, c.req.valid('json'))
      const published = theOne(await sheetsOfTrial(db, trialId), row.id)
      return made ? c.json(published, 201) : c.json(published, 200)
    })
}

export type EvidenceRoutes = ReturnType<typeof evidenceRoutes>

const letters = createRequire(import.meta.url)
const fontFile = (subset: string) =>
  readFileSync(
    letters.resolve(`@fontsource-variable/ysabeau-office/files/ysabeau-office-${subset}-wght-normal.woff2`),
  )

/** `/sheets/…`: the printable pages themselves, for reading without script. */
export function sheetPages(db: Kysely<Database>): Hono {
  const fonts = new Map<string, Buffer>()
  const font = (c: Context, subset: string) => {
    const file = fonts.get(subset) ?? fontFile(subset)
    fonts.set(subset, file)
    return c.body(new Uint8Array(file), 200, {
      'content-type': 'font/woff2',
      'cache-control': 'max-age=604800',
    })
  }
  const uuid = (text: string) => {
    if (!id.safeParse(text).success) throw new Problem('not-found', 'There is no sheet at this address.')
    return text
  }
  const page = (body: string) => ({
    body,
    headers: { 'content-type': 'text/html; charset=utf-8', 'content-security-policy': pagePolicy(body) },
  })
  return new Hono()
    .get('/sheet.css', (c) =>
      c.body(sheetCss, 200, { 'content-type': 'text/css; charset=utf-8', 'cache-control': 'max-age=3600' }),
    )
    .get('/letters-latin.woff2', (c) => font(c, 'latin'))
    .get('/letters-greek.woff2', (c) => font(c, 'greek'))
    .get('/trials/:id', async (c) => {
      const record = await trialRecord(db, uuid(c.req.param('id')))
      const within = c.req.query('within')
      const finding = findIn(record, { within, alone: true })
      const parts = findParts(record, finding, { within })
      const written = await sheetPage(sheetOf(record, finding, parts), parts, {
        state: 'Draft, not published',
        stamp: '',
      })
      const { body, headers } = page(String(written))
      return c.body(body, 200, headers)
    })
    .get('/:id', async (c) => {
      const row = await theRow(db, 'evidenceSheet', uuid(c.req.param('id')), 'sheet')
      const { sheet, finding, parts = [finding] } = row.body
      const beside = await besideSheet(db, row)
      const stamp = `Sheet ${row.id.slice(0, 8)}, checksum ${row.sha256.slice(0, 16).replace(/(.{4})(?=.)/g, '$1 ')}.`
      const { body, headers } = page(
        String(
          await sheetPage(sheet, parts, {
            state: `Evidence sheet, published ${day(row.madeAt)}`,
            stamp,
            ...beside,
          }),
        ),
      )
      return c.body(body, 200, headers)
    })
}
