import type { Context } from 'hono'

/** What a handler needs of its context when the route has checked `Valid`: the same for every noun. */
export type Checked<Valid> = Pick<Context, 'json' | 'body' | 'header'> & {
  readonly req: { readonly valid: Valid; readonly header: (name: string) => string | undefined }
}

export type ValidId = (target: 'param') => { readonly id: string }
export type ValidPage = (target: 'query') => { readonly limit: number; readonly after?: string | undefined }
export type ValidBody<Body> = (target: 'json') => Body
export type ValidMatch = (target: 'header') => { readonly 'if-match'?: string | undefined }
