import { connect as connectTo, createServer, type Socket } from 'node:net'
import { sql } from 'kysely'
import { expect, inject, onTestFinished, test } from 'vitest'
import { refusalByDatabase } from '#db/failures.ts'
import { openServer } from '#db/server-open.ts'
import '#test/support/provided.ts'

function addressOfServer(): URL {
  const database = inject('database')
  if (database.kind !== 'server') throw new Error('This test is for a server.')
  return new URL(database.url)
}

async function opened(url: string) {
  const it = await openServer(url, { waitMs: 2000 })
  onTestFinished(() => it.close())
  return it.db
}

const problemOf = (asked: Promise<unknown>) =>
  asked.then(
    () => 'answered',
    (error: unknown) => refusalByDatabase(error)?.problem ?? error,
  )

test('a connection taken away in the middle of a transaction means that the database is away, and the next finds it', async () => {
  const db = await opened(addressOfServer().href)
  const lost = db.transaction().execute(async (tx) => {
    await sql`select pg_terminate_backend(pg_backend_pid())`.execute(tx)
  })
  expect(await problemOf(lost)).toBe('database-away')
  expect(await problemOf(sql`select 1`.execute(db))).toBe('answered')
})

test('a connection that is cut while a transaction thinks is known by its next statement', async () => {
  const db = await opened(addressOfServer().href)
  const lost = db.transaction().execute(async (tx) => {
    const { rows } = await sql<{ pid: number }>`select pg_backend_pid() as pid`.execute(tx)
    await sql`select pg_terminate_backend(${rows[0]?.pid}::int)`.execute(db)
    await new Promise((resolve) => setTimeout(resolve, 200))
    await sql`select 1`.execute(tx)
  })
  expect(await problemOf(lost)).toBe('database-away')
})

/** Stands between the tool and the server, and cuts each connection over which `cutAt` is said. */
async function openThroughGate() {
  const target = addressOfServer()
  const gate = { cutAt: undefined as string | undefined, shut: false, silent: false }
  const open = new Set<Socket>()
  const listener = createServer((client) => {
    open.add(client)
    client.on('error', () => {})
    if (gate.silent) return
    if (gate.shut) {
      client.resetAndDestroy()
      return
    }
    const server = connectTo(Number(target.port || 5432), target.hostname)
    client.on('close', () => server.destroy())
    server.on('error', () => client.destroy())
    server.on('close', () => client.destroy())
    client.on('data', (bytes) => {
      if (gate.cutAt && bytes.includes(gate.cutAt)) client.resetAndDestroy()
      else server.write(bytes)
    })
    server.pipe(client)
  })
  await new Promise<void>((resolve) => listener.listen(0, '127.0.0.1', resolve))
  const address = new URL(target)
  address.hostname = '127.0.0.1'
  address.port = String((listener.address() as { port: number }).port)
  const db = await opened(address.href)
  const cutAll = () => {
    for (const socket of open) socket.resetAndDestroy()
  }
  onTestFinished(() => {
    listener.close()
    cutAll()
  })
  return { db, gate, cutAll }
}

test('connections that break while they are made ready leave their places in the pool', async () => {
  const { db, gate, cutAll } = await openThroughGate()
  cutAll()
  gate.cutAt = 'set time zone'
  for (let n = 0; n < 25; n++) expect(await problemOf(sql`select 1`.execute(db))).toBe('database-away')
  gate.cutAt = undefined
  expect(await problemOf(sql`select 1`.execute(db))).toBe('answered')
})

test('a statement and a commit that are cut off mean that the database is away, and so does a door that is shut', async () => {
  const { db, gate, cutAll } = await openThroughGate()
  gate.cutAt = 'select 7'
  expect(await problemOf(sql`select 7`.execute(db))).toBe('database-away')
  gate.cutAt = 'commit'
  expect(await problemOf(db.transaction().execute((tx) => sql`select 1`.execute(tx)))).toBe('database-away')
  gate.shut = true
  cutAll()
  expect(await problemOf(sql`select 1`.execute(db))).toBe('database-away')
  gate.cutAt = undefined
  gate.shut = false
  expect(await problemOf(sql`select 1`.execute(db))).toBe('answered')
})

test('a server that takes a connection and then says nothing is away', async () => {
  const { db, gate, cutAll } = await openThroughGate()
  gate.silent = true
  cutAll()
  expect(await problemOf(sql`select 1`.execute(db))).toBe('database-away')
})
