import { createServer, type Server } from 'node:http'
import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { getRequestListener } from '@hono/node-server'
import { CannotStart } from '#db/cannot-start.ts'
import { migrate } from '#db/migrate.ts'
import { openDatabase } from '#db/open-database.ts'
import { createApp } from './app.ts'
import { readSettings, refuseOpenHouse, type Settings } from './config.ts'
import { loadExampleStudio } from './example-studio/load-example-studio.ts'
import { isLoopback, ownOrigins } from './http/own-origins.ts'
import { webFiles } from './http/web-files.ts'
import { plainly } from './plainly.ts'
import { openSignIn } from './sign-in/open-sign-in.ts'

// Compiled, this file is dist/api/main.js and the pages lie in dist/web; from the sources it is api/main.ts.
const fromSource = import.meta.url.endsWith('.ts')
const pages = fileURLToPath(new URL(fromSource ? '../dist/web' : '../web', import.meta.url))

/** The only file that reads the environment, opens things and listens. */
await plainly(async () => {
  const { ACCESS_PHRASE, ...settings } = readSettings(process.env)
  refuseOpenHouse({ ...settings, ACCESS_PHRASE })
  const signingIn =
    ACCESS_PHRASE === undefined ? undefined : await openSignIn(ACCESS_PHRASE, settings.PUBLIC_URL)
  delete process.env.ACCESS_PHRASE
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
    server = await listen(settings)
    const app = createApp({
      db: opened.db,
      publicUrl: settings.PUBLIC_URL,
      origins: ownOrigins({
        host: settings.HOST,
        port: portOf(server),
        publicUrl: settings.PUBLIC_URL,
        allowedHosts: settings.ALLOWED_HOSTS,
      }),
      signingIn,
    })
    app.get('*', webFiles(pages))
    server.on('request', getRequestListener(app.fetch))
  } catch (error) {
    await opened.close()
    throw error
  }

  const { HOST: host } = settings
  const here = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host
  console.log(`Runs Clear is at http://${here.includes(':') ? `[${here}]` : here}:${portOf(server)}`)
  console.log(
    `Records: ${opened.kind === 'embedded' ? resolve(opened.dataDir) : 'the server of DATABASE_URL'}. Ctrl+C ends it.`,
  )
  if (!isLoopback(host))
    console.log('Other machines reach it under PUBLIC_URL or a name in ALLOWED_HOSTS, and sign in.')

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

function whereRecordsAre(
  settings: Pick<Settings, 'DATABASE_URL' | 'DATA_DIR'>,
): { databaseUrl: string } | { dataDir: string } {
  return settings.DATABASE_URL ? { databaseUrl: settings.DATABASE_URL } : { dataDir: settings.DATA_DIR }
}

type Where = Pick<Settings, 'HOST' | 'PORT'>

/** Holds the port; nobody is answered before the application, which has to know the port, is there. */
function listen({ HOST: hostname, PORT: port }: Where): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(new CannotStart(whyNot(error, hostname, port))),
    )
    server.listen(port, hostname, () => resolve(server))
  })
}

function portOf(server: Server): number {
  return (server.address() as { port: number }).port
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
