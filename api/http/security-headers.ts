import { createHash } from 'node:crypto'
import type { MiddlewareHandler } from 'hono'

/**
 * For every answer: it is what its type says, where a link leads learns nothing of where it stood, and no page of
 * another address may load it or put a frame around it.
 */
export const plainHeaders: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'x-frame-options': 'DENY',
}

/** Puts them on whatever is answered; before the answer is made, since to touch it afterwards costs it its fast way. */
export const withPlainHeaders: MiddlewareHandler = (c, next) => {
  for (const [name, value] of Object.entries(plainHeaders)) c.header(name, value)
  return next()
}

/**
 * What a page may load: only what we serve. Scripts that stand in the page itself are allowed by their fingerprint.
 * Images come also from memory: photographs before they are sent, charts on their way to a file.
 */
export function pagePolicy(html: string): string {
  const inline = [...html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)]
  const prints = inline.map(
    ([, code = '']) => `'sha256-${createHash('sha256').update(code).digest('base64')}'`,
  )
  return [
    `default-src 'self'`,
    `script-src ${["'self'", ...prints].join(' ')}`,
    `style-src 'self' 'unsafe-inline'`,
    `img-src 'self' data: blob:`,
    `font-src 'self' data:`,
    `object-src 'none'`,
    `base-uri 'none'`,
    `form-action 'self'`,
    `frame-ancestors 'none'`,
  ].join('; ')
}
