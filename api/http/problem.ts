import type { ErrorHandler, NotFoundHandler } from 'hono'
import { HTTPException } from 'hono/http-exception'
import { Problem, type ProblemName, problems } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'

export const ProblemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    errors: z.array(z.object({ pointer: z.string(), detail: z.string() })).optional(),
    requestId: z.string().optional(),
  })
  .openapi('Problem')

type ProblemAnswer = {
  description: string
  content: { 'application/problem+json': { schema: typeof ProblemSchema } }
}

/** The refusals of an address, for its entry in the OpenAPI document. */
export function answersProblem(...names: ProblemName[]): Record<number, ProblemAnswer> {
  const byStatus: Record<number, ProblemAnswer> = {}
  for (const name of names) {
    const { status, title } = problems[name]
    const before = byStatus[status]
    byStatus[status] = {
      description: before ? `${before.description}; ${title}` : title,
      content: { 'application/problem+json': { schema: ProblemSchema } },
    }
  }
  return byStatus
}

const statusNames: Partial<Record<number, ProblemName>> = {
  400: 'malformed-json',
  404: 'not-found',
  405: 'method-not-allowed',
  413: 'too-large',
  415: 'wrong-media-type',
}

function asProblem(error: unknown): Problem | undefined {
  if (error instanceof Problem) return error
  if (error instanceof HTTPException) {
    const name = statusNames[error.status]
    if (name) return new Problem(name, error.message || problems[name].title)
  }
  return undefined
}

/** What will pass says when to ask again, in seconds. */
export const askAgain = { 'retry-after': '2' } as const

/** Turns whatever was thrown into problem+json: a Problem as it is, anything else a bare 500 with the request's id. */
export const problemHandler: ErrorHandler = (error, c) => {
  const known = asProblem(error)
  const requestId = c.get('requestId') as string | undefined
  if (known) {
    return c.body(JSON.stringify(known.body), known.status, {
      'content-type': 'application/problem+json',
      ...(known.status === 503 ? askAgain : {}),
    })
  }
  console.error(`request ${requestId ?? '?'} ${c.req.method} ${c.req.path}:`, briefly(error))
  const body = {
    type: 'about:blank',
    title: 'Something broke here',
    status: 500,
    detail: 'Something broke here. It may not have been stored: look before you try again.',
    ...(requestId ? { requestId } : {}),
  }
  return c.body(JSON.stringify(body), 500, { 'content-type': 'application/problem+json' })
}

// An error of the embedded database carries its whole minified source in the stack: print what helps.
function briefly(error: unknown): string {
  if (!(error instanceof Error)) return String(error)
  const stack = (error.stack ?? '').split('\n').filter((line) => line.length < 400)
  return [`${error.name}: ${error.message}`, ...stack.slice(1, 12)].join('\n')
}

export const notFoundHandler: NotFoundHandler = (c) => {
  const body = new Problem('not-found', `There is nothing at ${c.req.path}.`).body
  return c.body(JSON.stringify(body), 404, { 'content-type': 'application/problem+json' })
}
