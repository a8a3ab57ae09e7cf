import { expect, test } from 'vitest'
import { aTrial, changed, made } from '#test/support/a-trial.ts'

test('an instrument keeps its noise, and stays while a sitting names it', async () => {
  const { client, sitting } = await aTrial()
  const instrument = await made(client, '/api/instruments', {
    name: 'bench',
    method: 'instrument',
    sdL: '0,13',
    sdA: 0.1,
    sdB: 0.12,
  })
  expect(instrument).toMatchObject({ sdL: 0.13, sdFrom: 'planning value' })
  const at = `/api/instruments/${instrument.id}`
  expect((await changed(client, at, 1, { sdFrom: 'gauge check' })).body.sdFrom).toBe('gauge check')
  await sitting({ instrumentId: instrument.id })
  expect((await client.ask('DELETE', at, undefined, { 'if-match': '2' })).status).toBe(409)
})
