import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { aTrial, made, trialIn } from '#test/support/a-trial.ts'

async function withSitting() {
  const trial = await aTrial()
  const skein = await trial.skein()
  const sitting = await trial.sitting()
  return { ...trial, skeinId: String(skein.id), sittingId: String(sitting.id) }
}

test('a reading is its mean, with how uneven its places are', async () => {
  const { client, id, skeinId, sittingId } = await withSitting()
  const spots = [
    { place: 1, l: 50, a: 2.6772, b: -79.7751 },
    { place: 2, l: '50', a: '0', b: '-82,7485' },
  ]
  const kept = await made(client, `/api/trials/${id}/readings`, { skeinId, sittingId, wear: {}, spots })
  expect(kept).toMatchObject({ meanL: 50, spotsN: 2, clipped: false, wearFrom: 'entered' })
  expect(kept.meanA).toBeCloseTo(1.3386, 10)
  expect(kept.meanB).toBeCloseTo(-81.2618, 10)
  // The first pair published with CIEDE2000: Sharma, Wu and Dalal (2005), Color Res. Appl. 30, 21–30, table 1
  expect(kept.spread).toBeCloseTo(2.0425, 4)
  expect(kept.mcdm).toBeGreaterThan(0)
})

test('one place says nothing of unevenness, and a value at its end is marked', async () => {
  const { reading, skeinId, sittingId } = await withSitting()
  const kept = await reading(skeinId, sittingId, [100, 0, 127])
  expect(kept).toMatchObject({ mcdm: null, spread: null, clipped: true })
})

test('a fault points at the place of the reading of the list', async () => {
  const { client, id, skeinId, sittingId } = await withSitting()
  const good = { skeinId, sittingId, wear: {}, spots: [{ l: 50, a: 0, b: 0 }] }
  const items = [
    good,
    good,
    {
      ...good,
      spots: [
        { l: 50, a: 0, b: 0 },
        { l: 300, a: 0, b: 0 },
      ],
    },
  ]
  const answer = await client.post(`/api/trials/${id}/readings`, { items })
  expect(answer.status).toBe(422)
  expect(answer.body.errors).toEqual([
    { pointer: '#/items/2/spots/1/l', detail: 'This is at most 100; the number 300 was read.' },
  ])
})

test('an unlikely colour is kept and asked about at its place', async () => {
  const { reading, skeinId, sittingId } = await withSitting()
  const kept = await reading(skeinId, sittingId, [5, 90, 90])
  expect(kept.doubts.map((doubt: { pointer: string }) => doubt.pointer)).toEqual(['#/spots/0/l', '#/spots/0'])
})

test('the same reading under the same id is harmless, a different one is refused', async () => {
  const { tryReading, skeinId, sittingId } = await withSitting()
  const id = randomUUID()
  expect((await tryReading(skeinId, sittingId, [50, 1, 2], { id })).status).toBe(201)
  expect((await tryReading(skeinId, sittingId, [50, 1, 2], { id })).status).toBe(200)
  const other = await tryReading(skeinId, sittingId, [50, 1, 3], { id })
  expect(other).toMatchObject({ status: 409, body: { errors: [{ pointer: '#/spots' }] } })
})

test('a skein is read once in a sitting, unless it is mounted again', async () => {
  const { tryReading, skeinId, sittingId } = await withSitting()
  expect((await tryReading(skeinId, sittingId, [50, 1, 2])).status).toBe(201)
  expect((await tryReading(skeinId, sittingId, [50, 1, 2])).status).toBe(409)
  expect((await tryReading(skeinId, sittingId, [50, 1, 2], { placing: 2 })).status).toBe(201)
})

test('a correction supersedes with a reason; what it corrects stays and counts no more', async () => {
  const { client, tryReading, reading, results, skeinId, sittingId } = await withSitting()
  const wrong = await reading(skeinId, sittingId, [50, 1, 2])
  const without = await tryReading(skeinId, sittingId, [52, 1, 2], { supersedes: wrong.id })
  expect(without).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/reason' }] } })
  const right = { supersedes: wrong.id, reason: 'typed the wrong line' }
  expect((await tryReading(skeinId, sittingId, [52, 1, 2], right)).body).toMatchObject({
    supersedesId: wrong.id,
    superseded: false,
  })
  expect((await client.get(`/api/readings/${wrong.id}`)).body).toMatchObject({ superseded: true, meanL: 50 })
  expect((await results('lightness')).map((row) => [row.value, row.readingsN])).toEqual([[52, 1]])
  const again = { supersedesId: wrong.id, reason: 'once more' }
  expect((await tryReading(skeinId, sittingId, [53, 1, 2], again)).status).toBe(409)
})

test('a correction is of the same skein', async () => {
  const { skein, reading, tryReading, skeinId, sittingId } = await withSitting()
  const { id: other } = await skein({ code: 'A2' })
  const wrong = await reading(skeinId, sittingId, [50, 1, 2])
  const answer = await tryReading(other, sittingId, [50, 1, 2], { supersedes: wrong.id, reason: 'mixed up' })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/skeinId' }] } })
})

test('a reading names a skein and a sitting of its own trial', async () => {
  const here = await withSitting()
  const there = await trialIn(here.db, here.client)
  const stranger = await there.skein()
  const strange = await here.tryReading(stranger.id, here.sittingId, [50, 1, 2])
  expect(strange.body.errors).toEqual([
    { pointer: '#/skeinId', detail: 'This skein belongs to another trial.' },
  ])
  const nothing = await here.tryReading(here.skeinId, randomUUID(), [50, 1, 2])
  expect(nothing.body.errors).toEqual([
    { pointer: '#/sittingId', detail: 'There is no sitting under this id.' },
  ])
})

test('five thousand readings are taken at once, all or nothing', async () => {
  const { client, id, sittingId, results } = await withSitting()
  const { items: skeins } = await made(client, `/api/trials/${id}/skeins`, {
    items: Array.from({ length: 1000 }, (_, index) => ({ code: `S${index}` })),
  })
  const readings = skeins.flatMap((skein: { id: string }) =>
    [1, 2, 3, 4, 5].map((placing) => ({
      skeinId: skein.id,
      sittingId,
      placing,
      wear: {},
      spots: [{ l: 40 + placing, a: 1, b: 2 }],
    })),
  )
  const at = `/api/trials/${id}/readings`
  const spoiled = [...readings.slice(0, -1), { ...readings.at(-1), skeinId: randomUUID() }]
  expect((await client.post(at, { items: spoiled })).body.errors).toMatchObject([
    { pointer: '#/items/4999/skeinId' },
  ])
  expect((await client.get(at)).body.items).toEqual([])
  expect((await made(client, at, { items: readings })).items).toHaveLength(5000)
  const lightness = await results('lightness')
  expect(lightness).toHaveLength(1000)
  expect(new Set(lightness.map((row) => `${row.value} from ${row.readingsN}`))).toEqual(
    new Set(['43 from 5']),
  )
})
