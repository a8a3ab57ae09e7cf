import { createRoute } from '@hono/zod-openapi'
import { Doubt, keptOf, oneId, oneOrMany } from '#api/contract/one-or-many.ts'
import { listOf, listQuery } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { answersProblem } from '#api/http/problem.ts'
import { ifMatch, json } from '#api/http/routes.ts'
import type { PlainTable } from '#db/rows.ts'
import type { Changed, Noun, Owner, Under } from './noun.ts'
import { saidParameters } from './said.ts'

/** What every address of a noun says of itself: its tag, a sentence, and headers that it reads beside its types. */
type Said = { readonly tags: string[]; readonly summary: string; readonly parameters?: typeof saidParameters }
/** What the address carries: nothing, or the id of what its records belong to. */
type Where = { readonly params?: z.ZodObject }

/** GET of a list, oldest first, in pages. */
export function listing<Path extends string, W extends Where, Q extends z.ZodObject, Shown extends z.ZodType>(
  path: Path,
  { where, query, shown, ...said }: Said & { where: W; query: Q; shown: Shown },
) {
  return createRoute({
    method: 'get',
    path,
    ...said,
    request: { ...where, query },
    responses: { 200: json(listOf(shown), 'A page'), ...answersProblem('not-found', 'at-fault') },
  })
}

/** POST of one record or of `{ items }`, all or nothing. */
function adding<Path extends string, W extends Where, Sent extends z.ZodType, Shape extends z.ZodRawShape>(
  path: Path,
  { where, sent, shown, ...said }: Said & { where: W; sent: Sent; shown: z.ZodObject<Shape> },
) {
  return createRoute({
    method: 'post',
    path,
    ...said,
    request: { ...where, body: json(oneOrMany(sent)) },
    responses: {
      201: json(keptOf(shown), 'As it is kept, with what is doubtful about it'),
      200: json(keptOf(shown), 'It was already there, the same'),
      ...answersProblem('malformed-json', 'wrong-media-type', 'not-found', 'already-there', 'at-fault'),
    },
  })
}

/** GET of one record. */
export function showing<Shown extends z.ZodType>({ shown, ...said }: Said & { shown: Shown }) {
  return createRoute({
    method: 'get',
    path: '/{id}',
    ...said,
    request: { params: oneId },
    responses: { 200: json(shown, 'As it is kept'), ...answersProblem('not-found') },
  })
}

/** PATCH of a record that is still at the version that was seen. */
function changing<Sent extends z.ZodType, Shape extends z.ZodRawShape>({
  sent,
  shown,
  ...said
}: Said & { sent: Sent; shown: z.ZodObject<Shape> }) {
  return createRoute({
    method: 'patch',
    path: '/{id}',
    ...said,
    request: { params: oneId, headers: ifMatch, body: json(sent) },
    responses: {
      200: json(shown.extend({ doubts: z.array(Doubt) }), 'As it is now, with what is doubtful about it'),
      ...answersProblem(
        'malformed-json',
        'not-found',
        'already-there',
        'changed-meanwhile',
        'at-fault',
        'version-missing',
      ),
    },
  })
}

/** DELETE of a record that is still at the version that was seen. */
function removing(said: Said) {
  return createRoute({
    method: 'delete',
    path: '/{id}',
    ...said,
    request: { params: oneId, headers: ifMatch },
    responses: {
      204: { description: 'It is gone' },
      ...answersProblem('not-found', 'still-in-use', 'changed-meanwhile', 'version-missing'),
    },
  })
}

/** The addresses of records under what they belong to: their list, and their POST. */
export function addressesUnder<
  Path extends string,
  T extends PlainTable,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
  O extends Owner,
>(path: Path, { owner, noun, plural, sent, shown }: Noun<T, Sent, z.ZodObject<Shape>> & Under<O>) {
  const tags = [plural]
  const params = oneId
  return {
    listed: listing(path, {
      tags,
      summary: `The ${plural} of a ${owner}, oldest first`,
      where: { params },
      query: listQuery,
      shown,
    }),
    added: adding(path, {
      tags,
      summary: `Add a ${noun}, or up to 5000 at once`,
      parameters: saidParameters,
      where: { params },
      sent,
      shown,
    }),
  }
}

/** The addresses of records that belong to nothing: their list, and their POST. */
export function freeAddresses<T extends PlainTable, Sent extends z.ZodType, Shape extends z.ZodRawShape>(
  { plural, sent, shown }: Noun<T, Sent, z.ZodObject<Shape>>,
  said: { readonly listed: string; readonly added: string },
) {
  const tags = [plural]
  return {
    all: listing('/', { tags, summary: said.listed, where: {}, query: listQuery, shown }),
    added: adding('/', { tags, summary: said.added, parameters: saidParameters, where: {}, sent, shown }),
  }
}

/** The address of one record, by its id. */
export function addressesOf<T extends PlainTable, Sent extends z.ZodType, Shape extends z.ZodRawShape>({
  noun,
  plural,
  shown,
}: Noun<T, Sent, z.ZodObject<Shape>>) {
  return { one: showing({ tags: [plural], summary: `One ${noun}`, shown }) }
}

/** The PATCH and DELETE of a record that is judged, with who and why for the journal. */
export function changesOf<
  T extends PlainTable,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
  Part extends z.ZodType,
>(it: Noun<T, Sent, z.ZodObject<Shape>> & Changed<T, Part>) {
  const { noun, plural, changed, shown } = it
  return {
    changed: changing({
      tags: [plural],
      summary: `Change a ${noun} that is still at the version you saw`,
      sent: changed,
      shown,
      parameters: saidParameters,
    }),
    removed: removalOf(it, `Remove a ${noun} of which nothing was measured`),
  }
}

/** The DELETE of a record that is judged, with who and why for the journal. */
export function removalOf<T extends PlainTable, Sent extends z.ZodType, Shape extends z.ZodRawShape>(
  { plural }: Noun<T, Sent, z.ZodObject<Shape>>,
  summary: string,
) {
  return removing({ tags: [plural], summary, parameters: saidParameters })
}

/** Every address of a noun of the studio that no finding judges. */
export function catalogueAddresses<
  T extends PlainTable,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
  Part extends z.ZodType,
>(it: Noun<T, Sent, z.ZodObject<Shape>> & Changed<T, Part>) {
  const { noun, plural, sent, changed, shown } = it
  const tags = [plural]
  return {
    all: listing('/', {
      tags,
      summary: `The ${plural}, oldest first`,
      where: {},
      query: listQuery,
      shown,
    }),
    added: adding('/', { tags, summary: `Add a ${noun}, or several`, where: {}, sent, shown }),
    ...addressesOf(it),
    changed: changing({
      tags,
      summary: `Change a ${noun} that is still at the version you saw`,
      sent: changed,
      shown,
    }),
    removed: removing({ tags, summary: `Remove a ${noun} that nothing else needs` }),
  }
}
