import fc from 'fast-check'
import { beforeAll, expect, test } from 'vitest'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import { rowCounts } from '#test/support/row-counts.ts'
import { type Address, addressesOf, wrongBodies } from '#test/support/wrong-bodies.ts'

const nobody = '11111111-1111-4111-8111-111111111111'

let addresses: Address[]
beforeAll(async () => {
  const client = clientOf(await emptyDatabase())
  addresses = addressesOf((await client.get('/api/openapi.json')).body)
})

/** A studio with one of everything, so that a wrong body reaches the address that it is for. */
async function studio() {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const made = async (path: string, body: object): Promise<string> => {
    const answer = await client.post(path, body)
    expect(answer.status, `${path} ${JSON.stringify(answer.body)}`).toBeLessThan(300)
    return answer.body.id ?? answer.body.items[0].id
  }
  const trials = await made('/api/trials', { title: 'A', question: 'B?' })
  const factorId = await made(`/api/trials/${trials}/factors`, {
    key: 'steamTime',
    levels: [{ label: '10', value: 10 }],
  })
  await made(`/api/trials/${trials}/rules`, {
    conditions: [{ outcome: 'dE00', statistic: 'upper limit', margin: 1 }],
    plannedSessions: 3,
  })
  const sessions = await made(`/api/trials/${trials}/sessions`, { label: '1' })
  const vessels = await made(`/api/sessions/${sessions}/vessels`, {
    stage: 'set',
    kind: 'packet',
    label: '1',
  })
  const skeins = await made(`/api/trials/${trials}/skeins`, { code: '1' })
  const placements = await made(`/api/vessels/${vessels}/placements`, { skeinId: skeins })
  const sittings = await made('/api/sittings', { trialId: trials, method: 'instrument', label: 'before' })
  const readings = await made(`/api/trials/${trials}/readings`, {
    skeinId: skeins,
    sittingId: sittings,
    spots: [{ l: 50, a: 0, b: 0 }],
  })
  const ids: Record<string, string> = { trials, sessions, vessels, skeins, placements, sittings, readings }
  for (const [noun, body] of Object.entries({
    bases: { name: 'a' },
    dyes: { name: 'a' },
    stocks: { label: 'a', parts: [], madeToMl: 100 },
    instruments: { name: 'a', method: 'eye' },
  })) {
    const answer = await client.post(`/api/${noun}`, body)
    if (answer.status < 300) ids[noun] = answer.body.id ?? answer.body.items[0].id
  }
  const pathTo = ({ path }: Address) =>
    path
      .replace('{factorId}', factorId)
      .replace('{edition}', '1')
      .replace(/\/api\/(\w+)\/\{id\}/, (_, noun: string) => `/api/${noun}/${ids[noun] ?? nobody}`)
      .replace(/\{\w+\}/g, nobody)
  return { db, client, pathTo }
}

test('twenty wrong bodies at every address: no 5xx, a problem with pointers, and not one row more or less', async () => {
  const { db, client, pathTo } = await studio()
  const before = await rowCounts(db)
  const withBody = addresses.filter((address) => address.body !== undefined)
  expect(withBody.length).toBeGreaterThan(30)
  for (const address of withBody) {
    await fc.assert(
      fc.asyncProperty(wrongBodies(address.body), async (body) => {
        const answer = await client.ask(address.method, pathTo(address), JSON.stringify(body) ?? 'null', {
          'if-match': '"1"',
        })
        const said = `${address.method} ${address.path} ${JSON.stringify(body)} → ${answer.status} ${JSON.stringify(answer.body)}`
        expect(answer.status, said).toBeGreaterThanOrEqual(400)
        expect(answer.status, said).toBeLessThan(500)
        expect(answer.headers.get('content-type'), said).toBe('application/problem+json')
        if (answer.status === 422) expect(answer.body.errors?.[0]?.pointer, said).toMatch(/^#/)
      }),
      { numRuns: 20, seed: 20260224 },
    )
  }
  expect(await rowCounts(db)).toEqual(before)
}, 240_000)

test('malformed JSON, another type, a bad id and an unknown one are refused at every address', async () => {
  const { db, client, pathTo } = await studio()
  const before = await rowCounts(db)
  for (const address of addresses) {
    if (address.body !== undefined) {
      const broken = await client.ask(address.method, pathTo(address), '{"a":', { 'if-match': '"1"' })
      expect([address.path, broken.status, broken.headers.get('content-type')]).toEqual([
        address.path,
        400,
        'application/problem+json',
      ])
    }
    if (!address.path.includes('{id}')) continue
    for (const id of ['not-an-id', nobody, "1'; drop table trial; --"]) {
      const path = address.path
        .replace('{id}', encodeURIComponent(id))
        .replace('{edition}', '1')
        .replace(/\{\w+\}/g, nobody)
      const answer = await client.ask(address.method, path, address.body === undefined ? undefined : '{}', {
        'if-match': '"1"',
      })
      expect([address.method, path, answer.headers.get('content-type')]).toEqual([
        address.method,
        path,
        'application/problem+json',
      ])
      expect([404, 422]).toContain(answer.status)
    }
  }
  expect(await rowCounts(db)).toEqual(before)
}, 120_000)

test('an unknown path and a body over the limit are problems too', async () => {
  const { client } = await studio()
  expect(await client.get('/api/nothing')).toMatchObject({
    status: 404,
    body: { type: '/problems/not-found' },
  })
  expect(await client.post('/api/calculations/nothing', {})).toMatchObject({
    status: 404,
    body: { type: '/problems/not-found' },
  })
  const large = JSON.stringify({ title: 'x'.repeat(9 * 1024 * 1024) })
  expect(await client.post('/api/trials', large)).toMatchObject({
    status: 413,
    body: { type: '/problems/too-large' },
  })
})
