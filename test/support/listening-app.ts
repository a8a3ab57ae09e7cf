import { createServer } from 'node:http'
import { getRequestListener } from '@hono/node-server'
import pg from 'pg'
import { onTestFinished } from 'vitest'
import { createApp } from '#api/app.ts'
import { ownOrigins } from '#api/http/own-origins.ts'
import type { SigningIn } from '#api/sign-in/open-sign-in.ts'
import { kyselyOver } from '#db/kysely-over.ts'

/** The application behind a port of its own, for what needs no database: its address, gone after the test. */
export async function listeningApp(signingIn: SigningIn): Promise<string> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as { port: number }
  const origins = ownOrigins({ host: '127.0.0.1', port })
  const app = createApp({ db: kyselyOver(new pg.Pool({ host: '127.0.0.1', port: 1 })), origins, signingIn })
  server.on('request', getRequestListener(app.fetch))
  onTestFinished(() => void server.close())
  return `http://127.0.0.1:${port}`
}
