import { OpenAPIHono } from '@hono/zod-openapi'
import { calculationRoutes } from '#api/calculations/routes.ts'
import { notFoundHandler, problemHandler } from '#api/http/problem.ts'

const app = new OpenAPIHono()
app.route('/', calculationRoutes())
app.onError(problemHandler)
app.notFound(notFoundHandler)

/** Asks a computing address, as a script would: JSON in, JSON out. */
// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
export async function calculate(name: string, body: unknown): Promise<{ status: number; body: any }> {
  const answer = await app.request(`/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
  return { status: answer.status, body: await answer.json() }
}
