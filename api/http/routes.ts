import { type Hook, OpenAPIHono } from '@hono/zod-openapi'
import type { Env } from 'hono'
import { faultsOf } from '#api/contract/faults.ts'
import { Problem } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'

/** What fails its schema leaves as one kind of refusal, whichever route it came to. */
const refuse: Hook<unknown, Env, string, unknown> = (result) => {
  if (result.success) return
  const { target } = result
  if (target === 'json') {
    throw new Problem('at-fault', 'Some of this cannot be kept as it is.', faultsOf(result.error))
  }
  const faults = faultsOf(result.error, [target === 'param' ? 'path' : target])
  if (target === 'param') throw new Problem('not-found', 'There is nothing under this id.', faults)
  throw new Problem('at-fault', 'The address asks for something that is not there.', faults)
}

/** An empty set of routes that refuses in our words. */
export function newRoutes(): OpenAPIHono {
  return new OpenAPIHono({ defaultHook: refuse as Hook<unknown, Env, string, unknown> })
}

/** A JSON body, for a route's `request.body` or one of its `responses`. */
export function json<Schema extends z.ZodType>(schema: Schema, description = '') {
  return { description, required: true as const, content: { 'application/json': { schema } } }
}

/** `If-Match`, the version that was seen: a bare number, or quoted as HTTP writes it. */
export const ifMatch = z.object({ 'if-match': z.string().optional().openapi({ example: '"3"' }) })

/** The version named by `If-Match`, else 428; a version that is no number matches nothing. */
export function versionSeen(headers: { 'if-match'?: string | undefined }): number {
  const seen = headers['if-match']
  if (seen === undefined) {
    throw new Problem(
      'version-missing',
      'Send If-Match with the version you saw, so that nobody’s change is lost.',
    )
  }
  const version = Number(seen.replace(/^W\//, '').replaceAll('"', ''))
  return Number.isInteger(version) ? version : -1
}
