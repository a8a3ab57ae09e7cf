import { expect, test } from 'vitest'
import { aTrial, made } from '#test/support/a-trial.ts'

/** A skein in its own wash jar, and a sitting on the tenth. */
async function withJar(skeinBody: object = {}) {
  const trial = await aTrial()
  const { id: sessionId } = await trial.session({ kind: 'wash', label: 'wash day' })
  const jar = await trial.vessel(sessionId, { stage: 'wash', kind: 'jar', label: 'jar 1' })
  const skein = await trial.skein(skeinBody)
  await trial.place(jar.id, skein.id)
  const sitting = await trial.sitting({ at: '2026-03-10T10:00:00Z' })
  const expose = (body: object) => trial.client.post(`/api/vessels/${jar.id}/exposures`, body)
  return {
    ...trial,
    sessionId,
    jarId: String(jar.id),
    skeinId: String(skein.id),
    sittingId: sitting.id,
    expose,
  }
}

const wash = (day: string, cycles = 1) => ({ protocol: 'W2', cycles, endedAt: `2026-03-${day}T12:00:00Z` })

test('wear left out is the sum of the exposures that had ended by then', async () => {
  const { expose, reading, skeinId, sittingId } = await withJar()
  await expose({ items: [wash('02'), wash('04', 2), wash('12')] })
  const kept = await reading(skeinId, sittingId, [50, 1, 2], { wear: undefined })
  expect(kept).toMatchObject({ wear: { W2: 3 }, wearFrom: 'exposures' })
})

test('entered and exposed wear that differ are refused with both', async () => {
  const { expose, tryReading, skeinId, sittingId } = await withJar()
  await expose(wash('02', 2))
  const answer = await tryReading(skeinId, sittingId, [50, 1, 2], { wear: { W2: 3 } })
  expect(answer.status).toBe(422)
  expect(answer.body.errors).toEqual([
    {
      pointer: '#/wear',
      detail: 'Entered: three warm hand washes. By its exposures: two warm hand washes. Which is right?',
    },
  ])
  expect((await tryReading(skeinId, sittingId, [50, 1, 2], { wear: { W2: 2 } })).status).toBe(201)
})

test('with dates missing the wear is entered, and not guessed', async () => {
  const { expose, tryReading, skeinId, sittingId } = await withJar()
  await expose({ protocol: 'W2', cycles: 3 })
  const guess = await tryReading(skeinId, sittingId, [50, 1, 2], { wear: undefined })
  expect(guess).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/wear' }] } })
  const entered = await tryReading(skeinId, sittingId, [50, 1, 2], { wear: { W2: 3 } })
  expect(entered.body).toMatchObject({ wear: { W2: 3 }, wearFrom: 'entered' })
})

test('an exposure written down later reaches the readings that left their wear to it', async () => {
  const { client, expose, sitting, reading, results, skeinId, sittingId } = await withJar()
  const first = await sitting({ label: 'before', at: '2026-03-01T10:00:00Z' })
  await reading(skeinId, first.id, [45, 25, -7], { wear: undefined })
  const after = await reading(skeinId, sittingId, [47, 22, -6], { wear: undefined })
  expect(await results('dE00')).toMatchObject([{ wearKey: '' }])
  await expose(wash('02', 3))
  expect((await client.get(`/api/readings/${after.id}`)).body.wear).toEqual({ W2: 3 })
  expect(await results('dE00')).toMatchObject([{ wearKey: 'W2=3', basis: 'own' }])
})

test('light counts the days that had gone by, and none under foil', async () => {
  const { client, vessel, session, skein, place, reading, sittingId } = await withJar()
  const { id: sessionId } = await session({ kind: 'light' })
  const card = await vessel(sessionId, { stage: 'light', kind: 'card', label: 'card' })
  const open = await skein({ code: 'open' })
  const foil = await skein({ code: 'foil' })
  await place(card.id, open.id)
  await place(card.id, foil.id, { covered: true })
  await made(client, `/api/vessels/${card.id}/exposures`, {
    protocol: 'X1',
    startedAt: '2026-02-10T10:00:00Z',
    due: ['2026-03-10'],
  })
  const { wear } = await reading(open.id, sittingId, [50, 1, 2], { wear: undefined })
  // From the tenth of February to the tenth of March 2026
  expect(wear).toEqual({ 'X1 days': 28 })
  expect((await reading(foil.id, sittingId, [50, 1, 2], { wear: undefined })).wear).toEqual({})
})

test('a part has been through what its parent had before the cut', async () => {
  const { expose, skein, reading, skeinId, sittingId } = await withJar()
  await expose({ items: [wash('02'), wash('06')] })
  const part = await skein({ code: 'A1 b', cutFromId: skeinId, cutAt: '2026-03-04T00:00:00Z' })
  expect((await reading(part.id, sittingId, [50, 1, 2], { wear: undefined })).wear).toEqual({ W2: 1 })
})

test('a twin of no date is taken to have been cut before the washing', async () => {
  const { expose, skein, reading, skeinId, sittingId } = await withJar()
  await expose(wash('02', 3))
  const twin = await skein({ code: 'twin', role: 'twin', cutFromId: skeinId })
  const piece = await skein({ code: 'piece', cutFromId: skeinId })
  expect((await reading(twin.id, sittingId, [50, 1, 2], { wear: undefined })).wear).toEqual({})
  expect((await reading(piece.id, sittingId, [50, 1, 2], { wear: undefined })).wear).toEqual({ W2: 3 })
})

test('rubbing counts strokes, ten where none were written down', async () => {
  const { expose, reading, skeinId, sittingId } = await withJar()
  await expose({
    items: [
      { protocol: 'rub wet', strokes: 25, endedAt: '2026-03-02T12:00:00Z' },
      { protocol: 'rub dry', endedAt: '2026-03-02T12:00:00Z' },
    ],
  })
  const { wear } = await reading(skeinId, sittingId, [50, 1, 2], { wear: undefined })
  expect(wear).toEqual({ 'rub wet': 25, 'rub dry': 10 })
})

test('a corrected exposure counts once', async () => {
  const { expose, reading, skeinId, sittingId } = await withJar()
  const { body } = await expose(wash('02', 5))
  await expose({ ...wash('02', 3), supersedes: body.id, reason: 'it was three' })
  expect((await reading(skeinId, sittingId, [50, 1, 2], { wear: undefined })).wear).toEqual({ W2: 3 })
})

test('what ended before it started is refused', async () => {
  const { expose } = await withJar()
  const answer = await expose({ ...wash('02'), startedAt: '2026-03-03T12:00:00Z' })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/endedAt' }] } })
})
