import { expect, test } from 'vitest'
import { aTrial, changed } from '#test/support/a-trial.ts'

test('conditions of four places stand merged with every result', async () => {
  const trial = await aTrial({ conditions: { depth: 1, hold: 10, acid: 20, coolDown: 1 } })
  const session = await trial.session({
    waterAlkalinityMgL: 150,
    conditions: { hold: 20, acid: 30, coolDown: 2 },
  })
  const vessel = await trial.vessel(session.id, {
    stage: 'dye',
    kind: 'jar',
    conditions: { acid: 40, coolDown: 3 },
  })
  const parent = await trial.skein({ massG: 50, conditions: { coolDown: 4, pH: 4 } })
  const part = await trial.skein({ code: 'A1 a', massG: 12, cutFromId: parent.id, conditions: { pH: null } })
  await trial.place(vessel.id, parent.id)
  await trial.outcome({ kind: 'felting', skeinId: part.id, value: 1 })
  expect((await trial.results('felting'))[0]?.resolved).toEqual({
    depth: 1,
    hold: 20,
    acid: 40,
    coolDown: 4,
    pH: null,
    tapAlkalinity: 150,
    fibreMass: 12,
  })
})

test('what a session says of a stage counts for what was at this stage in it', async () => {
  const trial = await aTrial()
  const stove = await trial.session({ altitudeM: 300, conditions: { steamTime: 35, washTemp: 60 } })
  const wash = await trial.session({
    kind: 'wash',
    label: 'wash day',
    altitudeM: 20,
    conditions: { steamTime: 75, washTemp: 40 },
  })
  const packet = await trial.vessel(stove.id)
  const jar = await trial.vessel(wash.id, { stage: 'wash', kind: 'jar' })
  const { id: skeinId } = await trial.skein()
  await trial.place(packet.id, skeinId)
  await trial.place(jar.id, skeinId)
  await trial.outcome({ kind: 'felting', skeinId, value: 1 })
  const [row] = await trial.results('felting')
  expect(row?.resolved).toEqual({ steamTime: 35, washTemp: 40, altitude: 300 })
  expect(row).toMatchObject({ sessionId: stove.id, vessels: { set: packet.id, wash: jar.id }, lotId: null })
})

test('a change of the trial’s conditions reaches every result', async () => {
  const trial = await aTrial()
  const { id: skeinId } = await trial.skein()
  await trial.outcome({ kind: 'felting', skeinId, value: 1 })
  const answer = await changed(trial.client, `/api/trials/${trial.id}`, 1, { conditions: { depth: '1,5' } })
  expect(answer.body.conditions).toEqual({ depth: 1.5 })
  expect((await trial.results('felting'))[0]?.resolved).toEqual({ depth: 1.5 })
  const wrong = await changed(trial.client, `/api/trials/${trial.id}`, 2, { conditions: { depth: 99 } })
  expect(wrong).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/conditions/depth' }] } })
})

test('a result is as old as the first thing that it rests on, by either clock', async () => {
  const trial = await aTrial()
  const { id: skeinId } = await trial.skein()
  const before = await trial.sitting()
  const after = await trial.sitting({ label: 'after' })
  await trial.reading(skeinId, before.id, [45, 25, -7], { takenAt: '2020-05-01T10:00:00Z' })
  const worn = await trial.reading(skeinId, after.id, [47, 22, -6], {
    wear: { W2: 3 },
    takenAt: '2099-05-01T10:00:00Z',
  })
  const [loss] = await trial.results('dE00')
  expect(loss?.firstRecordedAt.toISOString()).toBe('2020-05-01T10:00:00.000Z')
  const outcome = await trial.outcome({ kind: 'felting', skeinId, value: 1, takenAt: '2099-05-01T10:00:00Z' })
  const [felting] = await trial.results('felting')
  expect(felting?.firstRecordedAt.toISOString()).toBe(outcome.createdAt)
  expect(worn.takenAt).toBe('2099-05-01T10:00:00.000Z')
})

test('settings that cannot stand together are not averaged: those with the most readings count', async () => {
  const trial = await aTrial()
  const { id: skeinId } = await trial.skein()
  const bench = await trial.sitting()
  const lamp = await trial.sitting({ label: 'lamp', illuminant: 'A' })
  await trial.reading(skeinId, bench.id, [40, 0, 0])
  await trial.reading(skeinId, bench.id, [42, 0, 0], { placing: 2 })
  await trial.reading(skeinId, lamp.id, [60, 0, 0])
  expect(await trial.results('lightness')).toMatchObject([{ value: 41, readingsN: 2 }])
})

test('a skein taken out of its vessel is no result of that vessel', async () => {
  const trial = await aTrial()
  const jar = await trial.vessel((await trial.session()).id, { stage: 'dye', kind: 'jar' })
  const { id: skeinId } = await trial.skein()
  const { id } = await trial.place(jar.id, skeinId)
  await trial.outcome({ kind: 'dye left', vesselId: jar.id, value: 6 })
  expect(await trial.results('dye left')).toHaveLength(1)
  await trial.client.ask('DELETE', `/api/placements/${id}`, undefined, { 'if-match': '1' })
  expect(await trial.results('dye left')).toEqual([])
})
