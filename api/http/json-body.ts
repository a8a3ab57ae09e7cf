import type { Context } from 'hono'
import { Problem } from '#api/contract/problem.ts'
import { isJson } from './accepts.ts'

/** The JSON body of a request, whatever it holds; not JSON is a 400, another media type a 415. */
export async function jsonBody(c: Context): Promise<unknown> {
  if (!isJson(c)) {
    throw new Problem(
      'wrong-media-type',
      'Send this as JSON, with the header Content-Type: application/json.',
    )
  }
  const text = await c.req.text()
  try {
    return JSON.parse(text)
  } catch {
    throw new Problem('malformed-json', 'The body is not JSON. Look for a missing quote, comma or bracket.')
  }
}
