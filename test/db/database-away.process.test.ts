import pg from 'pg'
import { expect, onTestFinished, test } from 'vitest'
import { ownPostgres } from '#test/support/own-postgres.ts'
import { type RunningServer, startServer } from '#test/support/running-server.ts'
import { isAcknowledged, type SentRecord, writeStubbornly } from '#test/support/stubborn-writer.ts'

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms))

async function asAdministrator<Row extends object>(url: string, statement: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: url, application_name: 'administrator' })
  await client.connect()
  try {
    return (await client.query<Row>(statement)).rows
  } finally {
    await client.end()
  }
}

/** Takes every connection of the tool away, as an administrator may; gives how many there were, and at work. */
async function takeConnectionsAway(url: string): Promise<{ taken: number; busy: number }> {
  const rows = await asAdministrator<{ busy: boolean }>(
    url,
    `select state <> 'idle' as busy, pg_terminate_backend(pid) from pg_stat_activity where application_name = 'runs-clear'`,
  )
  return { taken: rows.length, busy: rows.filter((row) => row.busy).length }
}

async function healthOf({
  url,
}: RunningServer): Promise<{ status: number; type: string | null; body: unknown }> {
  const answer = await fetch(`${url}/api/health`)
  const body: unknown = await answer.json()
  return { status: answer.status, type: answer.headers.get('content-type'), body }
}

async function untilHealthy(server: RunningServer): Promise<void> {
  for (const end = Date.now() + 30_000; Date.now() < end; await pause(50))
    if ((await healthOf(server)).status === 200) return
  throw new Error('It did not come back.')
}

test('with its connections taken away three times and its server started again twice, it answers 503, comes back by itself and loses nothing', async () => {
  const postgres = await ownPostgres()
  const server = await startServer({ databaseUrl: postgres.url })
  onTestFinished(async () => {
    await server.kill()
  })
  const trial = await fetch(`${server.url}/api/trials`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ title: 'Steam', question: 'How short?' }),
  })
  const { id: trialId } = (await trial.json()) as { id: string }

  let done = false
  const over = Date.now() + 90_000
  const ends = { mayEnd: () => done, isOver: () => Date.now() > over }
  const bases = `${server.url}/api/bases`
  const skeins = `${server.url}/api/trials/${trialId}/skeins`
  const writers = [1, 2, 3, 4, 5, 6].map((n) =>
    n % 2
      ? writeStubbornly(bases, { ...ends, bodyOf: ({ id, name }) => ({ id, name }) })
      : writeStubbornly(skeins, { ...ends, bodyOf: ({ id, name }) => ({ id, code: name }) }),
  )
  const all: Promise<SentRecord[][]> = Promise.all(writers)

  const taken: { taken: number; busy: number }[] = []
  for (const _ of [1, 2, 3]) {
    await pause(700)
    taken.push(await takeConnectionsAway(postgres.url))
    await untilHealthy(server)
  }
  for (const how of ['fast', 'immediate'] as const) {
    await pause(500)
    await postgres.shutDown(how)
    expect(await healthOf(server)).toMatchObject({
      status: 503,
      type: 'application/problem+json',
      body: { type: '/problems/database-away', status: 503, parts: { database: 'away' } },
    })
    await pause(300)
    await postgres.startAgain()
    await untilHealthy(server)
  }
  await pause(500)
  done = true
  const sent = (await all).flat()

  expect(taken.every((it) => it.taken > 0)).toBe(true)
  expect(taken.reduce((sum, it) => sum + it.busy, 0)).toBeGreaterThan(0)
  expect(sent.length).toBeGreaterThan(50)
  expect(sent.filter((it) => !isAcknowledged(it))).toEqual([])
  const answers = new Set(sent.flatMap((it) => it.answers))
  expect([...answers].filter((it) => it !== 200 && it !== 201)).toEqual([503])
  expect(new Set(sent.flatMap((it) => it.problems))).toEqual(new Set(['/problems/database-away']))

  const kept = await asAdministrator<{ id: string; name: string }>(
    postgres.url,
    `select id, name from base union all select id, code from skein`,
  )
  const inOrder = (rows: readonly { id: string; name: string }[]) =>
    rows.map(({ id, name }) => `${id} ${name}`).sort()
  expect(inOrder(kept)).toEqual(inOrder(sent))
  expect(await healthOf(server)).toEqual({
    status: 200,
    type: 'application/json',
    body: { ok: true },
  })
  // It answers to the process that was started first, which ends only now and because it is asked to.
  expect(await server.stop()).toMatchObject({ code: 0, signal: null })
})
