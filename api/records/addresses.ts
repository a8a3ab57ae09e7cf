import { createRoute } from '@hono/zod-openapi'
import { Doubt, keptOf, oneId, oneOrMany } from '#api/contract/one-or-many.ts'
import { listOf, listQuery } from '#api/contract/quantity.ts'
import { z } from '#api/contract/schema.ts'
import { answersProblem } from '#api/http/problem.ts'
import { ifMatch, json } from '#api/http/routes.ts'
import type { PlainTable } from '#db/rows.ts'
import type { Noun, Owned, Owner } from './noun.ts'

/** What every address of a noun says of itself: its tag, and a sentence in the OpenAPI document. */
type Said = { readonly tags: string[]; readonly summary: string }
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
export function adding<
  Path extends string,
  W extends Where,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
>(path: Path, { where, sent, shown, ...said }: Said & { where: W; sent: Sent; shown: z.ZodObject<Shape> }) {
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
export function changing<Sent extends z.ZodType, Shape extends z.ZodRawShape>({
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
export function removing(said: Said) {
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
export function addressesIn<
  Path extends string,
  T extends PlainTable,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
  O extends Owner,
>(
  path: Path,
  { owner, noun, plural, sent, shown }: Noun<T, Sent, z.ZodObject<Shape>> & Owned<T, O, z.output<Sent>>,
) {
  const tags = [plural]
  const where = { params: oneId }
  return {
    listed: listing(path, {
      tags,
      summary: `The ${plural} of a ${owner}, oldest first`,
      where,
      query: listQuery,
      shown,
    }),
    added: adding(path, { tags, summary: `Add a ${noun}, or up to 5000 at once`, where, sent, shown }),
  }
}

/** The addresses of one record, by its id. */
export function addressesOf<T extends PlainTable, Sent extends z.ZodType, Shape extends z.ZodRawShape>({
  noun,
  plural,
  shown,
}: Noun<T, Sent, z.ZodObject<Shape>>) {
  return { one: showing({ tags: [plural], summary: `One ${noun}`, shown }) }
}
