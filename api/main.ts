import type { Server } from 'node:http'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { serve } from '@hono/node-server'
import { CannotStart } from '#db/cannot-start.ts'
import { migrate } from '#db/migrate.ts'
import { openDatabase } from '#db/open-database.ts'
import { createApp } from './app.ts'
import { readSettings, type Settings } from './config.ts'
import { loadExampleStudio } from './example-studio/load-example-studio.ts'
import { webFiles } from './http/web-files.ts'
import { plainly } from './plainly.ts'

// Compiled, this file is dist/api/main.js and the pages lie in dist/web; from the sources it is api/main.ts.
const fromSource = import.meta.url.endsWith('.ts')
const pages = fileURLToPath(new URL(fromSource ? '../dist/web' : '../web', import.meta.url))

/** The only file that reads the environment, opens things and listens. */
await plainly(async () => {
  const settings = readSettings(process.env)
  const opened = await openDatabase(whereRecordsAre(settings), {
    lost: (error) => {
      console.error(`${error.message} Nothing that was acknowledged is lost; start again.`)
      process.exit(1)
    },
  })
  let server: Server
  try {
    const { ran, copy } = await migrate(opened, { now: new Date() })
    if (copy) console.log(`The records were copied to ${copy} before ${ran.join(', ')}.`)
    if (process.argv.includes('--demo')) await loadExampleStudio(opened.db)
    const app = createApp({ db: opened.db, publicUrl: settings.PUBLIC_URL })
    app.get('*', webFiles(pages))
    server = await listen(app.fetch, settings)
  } catch (error) {
    await opened.close()
    throw error
  }

  const { port } = server.address() as { port: number }
  const { HOST: host } = settings
  console.log(`Runs Clear is at http://${host.includes(':') ? `[${host}]` : host}:${port}`)
  console.log(
    `Records: ${opened.kind === 'embedded' ? resolve(opened.dataDir) : 'the server of DATABASE_URL'}. Ctrl+C ends it.`,
  )
  if (!isLoopback(host)) console.log('There is no sign-in: whoever reaches this address may read and write.')

  let ending = false
  async function end(): Promise<void> {
    // Asked twice means now; what was acknowledged is on the disk either way.
    if (ending) process.exit(1)
    ending = true
    await closeServer(server)
    await opened.close()
    process.exit(0)
  }
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.on(
      signal,
      () =>
        void end().catch((error: Error) => {
          console.error(error.message)
          process.exit(1)
        }),
    )
})

function whereRecordsAre(settings: Settings): { databaseUrl: string } | { dataDir: string } {
  return settings.DATABASE_URL ? { databaseUrl: settings.DATABASE_URL } : { dataDir: settings.DATA_DIR }
}

type Fetch = Parameters<typeof serve>[0]['fetch']

function listen(fetch: Fetch, { HOST: hostname, PORT: port }: Settings): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = serve({ fetch, hostname, port }, () => resolve(server)) as Server
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(new CannotStart(whyNot(error, hostname, port))),
    )
  })
}

function whyNot(error: NodeJS.ErrnoException, host: string, port: number): string {
  if (error.code === 'EADDRINUSE')
    return `Port ${port} at ${host} is taken by another program; choose another with PORT.`
  if (error.code === 'EACCES')
    return `This user may not listen at port ${port}; choose one above 1023 with PORT.`
  return `It is not possible to listen at ${host}, port ${port}: ${error.message}.`
}

// What is being answered may finish; connections that merely stand open, or take longer than 3 seconds, may not.
function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const late = setTimeout(() => server.closeAllConnections(), 3000)
    server.close(() => {
      clearTimeout(late)
      resolve()
    })
    server.closeIdleConnections()
  })
}

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host.startsWith('127.')
}
