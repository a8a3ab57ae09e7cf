import type { Kysely } from 'kysely'
import { createApp } from '#api/app.ts'
import type { Database } from '#db/tables.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Answer = { status: number; body: any; headers: Headers }
export type Client = ReturnType<typeof clientOf>

/** Speaks to the whole application as a script would: JSON in, JSON out. */
export function clientOf(db: Kysely<Database>) {
  const app = createApp({ db })
  const ask = async (
    method: string,
    path: string,
    body?: unknown,
    headers: Record<string, string> = {},
  ): Promise<Answer> => {
    const answer = await app.request(path, {
      method,
      headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    })
    const text = await answer.text()
    const isJson = /json/.test(answer.headers.get('content-type') ?? '')
    return { status: answer.status, body: isJson ? JSON.parse(text) : text, headers: answer.headers }
  }
  return {
    ask,
    get: (path: string) => ask('GET', path),
    post: (path: string, body?: unknown, headers?: Record<string, string>) =>
      ask('POST', path, body ?? {}, headers),
  }
}
