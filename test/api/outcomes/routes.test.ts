import { expect, test } from 'vitest'
import { aTrial } from '#test/support/a-trial.ts'

const stained = { kind: 'staining', fibre: 'wool', wear: { W2: 3 } }

test('a grade may come as its text or as its number', async () => {
  const { client, id, skein, outcome } = await aTrial()
  const { id: skeinId } = await skein()
  expect(await outcome({ ...stained, skeinId, text: '3-4' })).toMatchObject({ value: 3.5, text: '3-4' })
  expect(await outcome({ ...stained, skeinId, fibre: 'nylon', value: '4,5' })).toMatchObject({ value: 4.5 })
  const post = (body: object) => client.post(`/api/trials/${id}/outcomes`, { skeinId, ...body })
  expect((await post({ kind: 'staining', value: 3.3 })).body.errors[0]).toEqual({
    pointer: '#/value',
    detail: 'Staining goes in halves; 3.3 was read.',
  })
  expect((await post({ kind: 'staining', text: 'bad' })).status).toBe(422)
  expect((await post({ kind: 'felting', value: 6 })).body.errors[0].pointer).toBe('#/value')
  expect((await post({ kind: 'my own measure', value: -17.25 })).status).toBe(201)
})

test('an outcome is of one thing', async () => {
  const { client, id, session, vessel, skein } = await aTrial()
  const { id: vesselId } = await vessel((await session()).id)
  const { id: skeinId } = await skein()
  const post = (body: object) => client.post(`/api/trials/${id}/outcomes`, { kind: 'pH', value: 4, ...body })
  expect((await post({})).status).toBe(422)
  expect((await post({ skeinId, vesselId })).status).toBe(422)
  expect((await post({ vesselId })).status).toBe(201)
})

test('two graders are one result: of two grades the worse, of three the middle one', async () => {
  const { skein, outcome, results } = await aTrial()
  const { id: skeinId } = await skein()
  await outcome({ ...stained, skeinId, text: '4', grader: 'A' })
  await outcome({ ...stained, skeinId, text: '3-4', grader: 'B' })
  expect(await results('staining')).toMatchObject([{ value: 3.5, readingsN: 2, fibre: 'wool' }])
  await outcome({ ...stained, skeinId, text: '4', grader: 'C' })
  expect(await results('staining')).toMatchObject([{ value: 4, readingsN: 3 }])
})

test('one grader grades one thing once', async () => {
  const { client, id, skein, outcome } = await aTrial()
  const { id: skeinId } = await skein()
  const first = await outcome({ ...stained, skeinId, text: '4', grader: 'A' })
  const at = `/api/trials/${id}/outcomes`
  expect((await client.post(at, { ...stained, skeinId, text: '4', grader: 'A' })).status).toBe(409)
  const corrected = { supersedes: first.id, reason: 'wrong lamp' }
  expect((await client.post(at, { ...stained, skeinId, text: '3', grader: 'A', ...corrected })).status).toBe(
    201,
  )
})

test('what was measured of a vessel is a result of each skein in it, but for one that has its own', async () => {
  const { session, vessel, skein, place, outcome, results } = await aTrial()
  const jar = await vessel((await session()).id, { stage: 'dye', kind: 'jar' })
  const one = await skein({ code: 'A1' })
  const other = await skein({ code: 'A2' })
  await outcome({ kind: 'dye left', vesselId: jar.id, value: 6 })
  expect(await results('dye left')).toEqual([])
  await place(jar.id, one.id)
  await place(jar.id, other.id)
  await outcome({ kind: 'dye left', skeinId: other.id, value: 12 })
  const rows = new Map((await results('dye left')).map((row) => [row.skeinId, row]))
  expect(rows.get(one.id)).toMatchObject({ value: 6, lotId: jar.id, vessels: { dye: jar.id } })
  expect(rows.get(other.id)?.value).toBe(12)
})

test('rinses written down one by one say how many it took until the water was nearly clear', async () => {
  const { client, id, skein, outcome, results } = await aTrial()
  const { id: skeinId } = await skein()
  const rinses = [2, 3, 3.5, 4, 5].map((clarity, index) => ({ skeinId, number: index + 1, clarity }))
  await client.post(`/api/trials/${id}/rinses`, { items: rinses })
  expect(await results('rinses to 4')).toMatchObject([{ value: 4 }])
  await outcome({ kind: 'rinses to 4', skeinId, value: 3 })
  expect(await results('rinses to 4'), 'what was entered stands first').toMatchObject([{ value: 3 }])
})

test('the name of a zone and the basis of a difference stand apart', async () => {
  const { skein, outcome, results } = await aTrial()
  const { id: skeinId } = await skein()
  await outcome({ kind: 'zone share', skeinId, value: 30, text: 'yellow' })
  await outcome({ kind: 'zone share', skeinId, value: 70, text: 'blue' })
  await outcome({ kind: 'dE00', skeinId, value: 2.5, text: 'covered', wear: { 'X1 days': 14 } })
  expect((await results('zone share')).map((row) => [row.basis, row.value])).toEqual([
    ['blue', 70],
    ['yellow', 30],
  ])
  expect(await results('dE00')).toMatchObject([{ basis: 'covered', wearKey: 'X1 days=14', wearAmount: 14 }])
})
