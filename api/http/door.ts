import type { HonoRequest, MiddlewareHandler } from 'hono'
import { Problem } from '#api/contract/problem.ts'
import { isOwnHost, isOwnOrigin } from './own-origins.ts'

/**
 * Stands before everything: answers only to the tool’s own names, and takes no write from a page of another address.
 * A browser says where a page comes from; a script that says nothing is let through.
 */
export function door(own: ReadonlySet<string>): MiddlewareHandler {
  return (c, next) => {
    if (!isOwnHost(own, c.req.header('host') ?? new URL(c.req.url).host)) {
      throw new Problem(
        'wrong-host',
        'The tool does not answer to the name in this address. Use the address that it said when it started, or add the name to the setting ALLOWED_HOSTS.',
      )
    }
    if (!readingMethods.has(c.req.method)) {
      refuseOtherOrigin(c.req, own)
      refuseFormTypes(c.req)
    }
    return next()
  }
}

const readingMethods = new Set(['GET', 'HEAD', 'OPTIONS'])

function refuseOtherOrigin(req: HonoRequest, own: ReadonlySet<string>): void {
  const origin = req.header('origin')
  const site = req.header('sec-fetch-site')
  const isForeign = origin !== undefined && !isOwnOrigin(own, origin)
  if (isForeign || (site !== undefined && site !== 'same-origin' && site !== 'none')) {
    throw new Problem(
      'other-origin',
      'This came from a page of another address, and such a page may not write here. Nothing was changed.',
    )
  }
}

/** What a form, or a page without asking, cannot send. A request that carries nothing needs no type. */
const takenType = /^(?:application\/(?:[\w.+-]+\+)?json|text\/csv|text\/tab-separated-values)$/i

function refuseFormTypes(req: HonoRequest): void {
  const type = req.header('content-type')
  const length = req.header('content-length') ?? '0'
  if (type === undefined && length === '0' && req.header('transfer-encoding') === undefined) return
  if (!takenType.test((type ?? '').split(';', 1)[0]?.trim() ?? '')) {
    throw new Problem(
      'wrong-media-type',
      'Send this as JSON, with the header Content-Type: application/json; a table also as text/csv.',
    )
  }
}
