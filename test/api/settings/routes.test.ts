import { expect, test } from 'vitest'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

const put = (client: ReturnType<typeof clientOf>, key: string, body: unknown, version?: number) =>
  client.ask('PUT', `/api/settings/${key}`, body, version === undefined ? {} : { 'if-match': `"${version}"` })

test('what nobody has chosen yet stands at version 0', async () => {
  const client = clientOf(await emptyDatabase())
  expect((await client.get('/api/settings')).body.items).toEqual([
    { key: 'units', version: 0, value: {} },
    { key: 'usual', version: 0, value: {} },
  ])
})

test('units are kept, and changed by who saw the last choice', async () => {
  const client = clientOf(await emptyDatabase())
  expect((await put(client, 'units', { system: 'us' }, 0)).body).toEqual({
    key: 'units',
    version: 1,
    value: { system: 'us' },
  })
  expect((await put(client, 'units', { system: 'metric' }, 1)).body.version).toBe(2)
  expect((await client.get('/api/settings')).body.items[0].value).toEqual({ system: 'metric' })
})

test('who saw an older choice, or none, is told so and changes nothing', async () => {
  const client = clientOf(await emptyDatabase())
  await put(client, 'units', { system: 'us' }, 0)
  for (const version of [0, 2])
    expect((await put(client, 'units', { system: 'metric' }, version)).status).toBe(412)
  expect((await put(client, 'units', { system: 'metric' })).status).toBe(428)
  expect((await client.get('/api/settings')).body.items[0].value).toEqual({ system: 'us' })
})

test('usual values take a decimal comma, and a blank is not known', async () => {
  const client = clientOf(await emptyDatabase())
  const { body } = await put(client, 'usual', { scaleStepGrams: '0,01', waterAlkalinity: '' }, 0)
  expect(body.value).toMatchObject({ scaleStepGrams: 0.01, waterAlkalinity: null, margin: null })
})

test('a value that cannot be is refused at its place, and an unknown one too', async () => {
  const client = clientOf(await emptyDatabase())
  const impossible = await put(client, 'usual', { acidStrengthPercent: '50' }, 0)
  expect(impossible.status).toBe(422)
  expect(impossible.body.errors[0].pointer).toBe('#/acidStrengthPercent')
  expect((await put(client, 'units', { system: 'furlongs' }, 0)).status).toBe(422)
  expect((await put(client, 'units', { system: 'us', colour: 'red' }, 0)).status).toBe(422)
  expect((await put(client, 'colours', {}, 0)).status).toBe(404)
})
