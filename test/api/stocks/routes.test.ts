import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { changed, made } from '#test/support/a-trial.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

async function withDye() {
  const client = clientOf(await emptyDatabase())
  const dye = await made(client, '/api/dyes', { name: 'teal', class: 'milling' })
  return { client, dyeId: String(dye.id), dyeAt: `/api/dyes/${dye.id}` }
}

test('the strength of a stock is its grams made up to 100 mL', async () => {
  const { client, dyeId } = await withDye()
  const parts = [
    { dyeId, grams: 1.5 },
    { dyeId, grams: 1 },
  ]
  const stock = await made(client, '/api/stocks', { label: 'teal 1 %', parts, madeToMl: 250 })
  expect(stock).toMatchObject({ strengthPercent: 1, doubts: [] })
  const weaker = await changed(client, `/api/stocks/${stock.id}`, 1, { madeToMl: 500 })
  expect(weaker.body).toMatchObject({ strengthPercent: 0.5, version: 2 })
})

test('a stock of a dye that is not there is refused at its part', async () => {
  const { client, dyeId } = await withDye()
  const parts = [
    { dyeId, grams: 1 },
    { dyeId: randomUUID(), grams: 1 },
  ]
  const answer = await client.post('/api/stocks', { label: 'x', parts, madeToMl: 100 })
  expect(answer).toMatchObject({
    status: 422,
    body: { errors: [{ pointer: '#/parts/1/dyeId', detail: 'There is no dye under this id.' }] },
  })
})

test('an impossible strength is refused, an unlikely one is asked about', async () => {
  const { client, dyeId } = await withDye()
  const stock = (grams: number) => ({ label: 'x', parts: [{ dyeId, grams }], madeToMl: 100 })
  expect((await client.post('/api/stocks', stock(21))).body.errors[0].pointer).toBe('#/madeToMl')
  expect((await made(client, '/api/stocks', stock(8))).doubts[0].pointer).toBe('#/madeToMl')
})

test('a dye of which a stock is made stays', async () => {
  const { client, dyeId, dyeAt } = await withDye()
  await made(client, '/api/stocks', { label: 'teal', parts: [{ dyeId, grams: 1 }], madeToMl: 100 })
  expect((await client.ask('DELETE', dyeAt, undefined, { 'if-match': '1' })).status).toBe(409)
})
