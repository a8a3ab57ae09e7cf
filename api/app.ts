import { OpenAPIHono } from '@hono/zod-openapi'
import { bodyLimit } from 'hono/body-limit'
import { requestId } from 'hono/request-id'
import { calculationRoutes } from '#api/calculations/routes.ts'
import { Problem } from '#api/contract/problem.ts'
import { notFoundHandler, problemHandler } from '#api/http/problem.ts'

/** The most that one request may carry. */
const mostBytes = 8 * 1024 * 1024

export function createApp(): OpenAPIHono {
  const app = new OpenAPIHono()
  app.use(requestId())
  app.use(
    '/api/*',
    bodyLimit({
      maxSize: mostBytes,
      onError: () => {
        throw new Problem('too-large', 'One request may carry 8 MiB. Send the rest in a second one.')
      },
    }),
  )
  app.route('/api/calculations', calculationRoutes())
  app.onError(problemHandler)
  app.notFound(notFoundHandler)
  return app
}
