import { createServer } from 'node:http'
import { join } from 'node:path'
import { getRequestListener } from '@hono/node-server'
import type { Kysely } from 'kysely'
import { createApp } from '#api/app.ts'
import { ownOrigins } from '#api/http/own-origins.ts'
import { webFiles } from '#api/http/web-files.ts'
import type { Database } from '#db/tables.ts'
import { builtTool } from './built-tool.ts'

export type ServedHere = { readonly url: string; stop(): Promise<void> }

/** The whole tool over this database, with the built pages, at an address of this machine. Needs `built-once.ts`. */
export async function serveHere(db: Kysely<Database>): Promise<ServedHere> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as { port: number }
  const app = createApp({ db, origins: ownOrigins({ host: '127.0.0.1', port }) })
  app.get('*', webFiles(join(builtTool, 'web')))
  server.on('request', getRequestListener(app.fetch))
  return {
    url: `http://127.0.0.1:${port}`,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
