import { expect, test } from 'vitest'
import { changed, made } from '#test/support/a-trial.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

test('a dye keeps the dyer’s own words, and is changed and removed by version', async () => {
  const client = clientOf(await emptyDatabase())
  const dye = await made(client, '/api/dyes', { name: 'my best teal', form: 'liquid', batch: 'B 12' })
  expect(dye).toMatchObject({ name: 'my best teal', class: 'unknown', form: 'liquid', batch: 'B 12' })
  const at = `/api/dyes/${dye.id}`
  expect((await changed(client, at, 1, { class: 'milling' })).body).toMatchObject({
    class: 'milling',
    form: 'liquid',
  })
  expect((await client.ask('DELETE', at, undefined, { 'if-match': '2' })).status).toBe(204)
})

test('a class that is none is refused with those that are', async () => {
  const client = clientOf(await emptyDatabase())
  const answer = await client.post('/api/dyes', { name: 'x', class: 'magic' })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/class' }] } })
  expect(answer.body.errors[0].detail).toContain('levelling')
})
