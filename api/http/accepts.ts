import type { Context, MiddlewareHandler } from 'hono'
import { Problem } from '#api/contract/problem.ts'
import { whyTooLarge } from './size-of-json.ts'

/** Whether a body says that it is JSON. */
export function isJson(c: Context): boolean {
  return /^application\/(?:[\w.+-]+\+)?json(?:\s*;|$)/i.test(c.req.header('content-type') ?? '')
}

/** Where long lists of plain numbers are at home: tables as cells, and what is only worked out. */
const longLists = /^\/api\/calculations\/|\/table$/

/** Looks at every body of JSON before it is taken apart, so that none keeps everybody else waiting. */
export const acceptsBodies: MiddlewareHandler = async (c, next) => {
  if (isJson(c) && c.req.method !== 'GET' && c.req.method !== 'HEAD') {
    const tooLarge = whyTooLarge(await c.req.text(), longLists.test(c.req.path) ? 2_000_000 : undefined)
    if (tooLarge !== undefined)
      throw new Problem('at-fault', 'This is more than can be taken apart at once.', [
        { pointer: '#', detail: tooLarge },
      ])
  }
  return next()
}
