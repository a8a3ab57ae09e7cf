import { OpenAPIHono } from '@hono/zod-openapi'
import { faultsOf } from '#api/contract/faults.ts'
import { Problem } from '#api/contract/problem.ts'
import { jsonBody } from '#api/http/json-body.ts'
import { answersProblem } from '#api/http/problem.ts'
import { calculations } from './table.ts'

/** `POST /api/calculations/<name>`: everything that the tool computes, without storing anything. */
export function calculationRoutes(): OpenAPIHono {
  const routes = new OpenAPIHono()
  for (const it of calculations) {
    routes.openAPIRegistry.registerPath({
      method: 'post',
      path: `/${it.name}`,
      tags: ['calculations'],
      summary: it.summary,
      request: { body: { required: true, content: { 'application/json': { schema: it.request } } } },
      responses: {
        200: { description: 'The answer, unrounded', content: { 'application/json': { schema: it.reply } } },
        ...answersProblem('malformed-json', 'too-large', 'wrong-media-type', 'at-fault'),
      },
    })
    routes.post(`/${it.name}`, async (c) => {
      const body = await jsonBody(c)
      let checked = it.quick?.(body)
      if (checked === undefined) {
        const parsed = it.request.safeParse(body, { reportInput: true })
        if (!parsed.success)
          throw new Problem('at-fault', 'This cannot be worked out as it is.', faultsOf(parsed.error))
        checked = parsed.data
      }
      return c.json(it.compute(checked as never) as object)
    })
  }
  return routes
}
