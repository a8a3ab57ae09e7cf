import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { changed, made } from '#test/support/a-trial.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

const studio = async () => clientOf(await emptyDatabase())

test('a base keeps its fibres and says how much of it takes acid dye', async () => {
  const client = await studio()
  const kept = await made(client, '/api/bases', {
    name: 'sock',
    composition: [
      { fibre: 'wool', percent: '70' },
      { fibre: 'nylon', percent: 20 },
      { fibre: 'cotton', percent: 10 },
    ],
  })
  expect(kept).toMatchObject({ dyeablePercent: 90, superwash: 'unknown', version: 1, doubts: [] })
})

test('a yarn of which little takes acid dye is kept and asked about', async () => {
  const client = await studio()
  const composition = [
    { fibre: 'merino', percent: 50 },
    { fibre: 'linen', percent: 50 },
  ]
  const kept = await made(client, '/api/bases', { name: 'half', composition })
  expect(kept.doubts).toEqual([
    { pointer: '#/composition', detail: 'Only 50 % of this yarn takes acid dye. Keep it?' },
  ])
})

test('shares that do not make a whole are refused at their place', async () => {
  const client = await studio()
  const odd = { name: 'odd', composition: [{ fibre: 'wool', percent: 90 }] }
  const answer = await client.post('/api/bases', { items: [{ name: 'fine' }, odd] })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/items/1/composition' }] } })
  expect((await client.get('/api/bases')).body.items, 'all or nothing').toEqual([])
})

test('the same base under the same id is harmless, a different one is refused', async () => {
  const client = await studio()
  const base = { id: randomUUID(), name: 'oat' }
  expect((await client.post('/api/bases', base)).status).toBe(201)
  expect((await client.post('/api/bases', base)).status).toBe(200)
  const other = await client.post('/api/bases', { ...base, name: 'rye' })
  expect(other).toMatchObject({ status: 409, body: { errors: [{ pointer: '#/name' }] } })
})

test('an id in capitals is the same id', async () => {
  const client = await studio()
  const id = randomUUID()
  await made(client, '/api/bases', { id: id.toUpperCase(), name: 'oat' })
  expect((await client.post('/api/bases', { id, name: 'oat' })).status).toBe(200)
  expect((await client.get(`/api/bases/${id.toUpperCase()}`)).body.id).toBe(id)
})

test('a list comes in pages, in the order in which it was sent', async () => {
  const client = await studio()
  await made(client, '/api/bases', { items: ['a', 'b', 'c', 'd', 'e'].map((name) => ({ name })) })
  const names: string[] = []
  let next: string | null = ''
  while (next !== null) {
    const page = await client.get(`/api/bases?limit=2${next ? `&after=${next}` : ''}`)
    names.push(...page.body.items.map((it: { name: string }) => it.name))
    next = page.body.next
  }
  expect(names).toEqual(['a', 'b', 'c', 'd', 'e'])
})

test('a change names the version that it saw', async () => {
  const client = await studio()
  const { id } = await made(client, '/api/bases', { name: 'oat', makerLot: '7' })
  const at = `/api/bases/${id}`
  expect((await client.ask('PATCH', at, { name: 'rye' })).status).toBe(428)
  expect((await changed(client, at, 1, { name: 'rye' })).body).toMatchObject({
    name: 'rye',
    makerLot: '7',
    version: 2,
  })
  expect((await changed(client, at, 1, { name: 'oat' })).status).toBe(412)
  expect((await client.ask('DELETE', at, undefined, { 'if-match': '1' })).status).toBe(412)
  expect((await client.ask('DELETE', at, undefined, { 'if-match': '2' })).status).toBe(204)
  expect((await client.get(at)).status).toBe(404)
})

test('blank is missing and 12,5 is a number', async () => {
  const client = await studio()
  const kept = await made(client, '/api/bases', {
    name: 'oat',
    makerLot: ' ',
    naturalL: '82,5',
    naturalA: '',
  })
  expect(kept).toMatchObject({ makerLot: null, naturalL: 82.5, naturalA: null })
})
