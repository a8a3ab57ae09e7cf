import { randomUUID } from 'node:crypto'
import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { rebuildResults } from '#api/results/rebuild-results.ts'
import { aTrial } from '#test/support/a-trial.ts'

async function family() {
  const trial = await aTrial()
  const jar = await trial.vessel((await trial.session()).id, { stage: 'dye', kind: 'jar' })
  const parent = await trial.skein()
  const parts = []
  for (let index = 0; index < 4; index++)
    parts.push(await trial.skein({ code: `part ${index}`, cutFromId: parent.id }))
  await trial.place(jar.id, parent.id)
  const before = await trial.sitting()
  const after = await trial.sitting({ label: 'after' })
  await trial.reading(parent.id, before.id, [45, 25, -7])
  return { ...trial, jar, parent, parts, after }
}

test('writers at the same moment do not break or lose each other’s results', async () => {
  const { db, client, id, jar, parent, parts, after, tryReading } = await family()
  const answers = await Promise.all([
    ...parts.flatMap(({ id: skeinId }) =>
      [1, 2, 3].map((placing) => tryReading(skeinId, after.id, [47, 22, -6], { wear: { W2: 3 }, placing })),
    ),
    ...parts.map((part) => client.ask('PATCH', `/api/skeins/${part.id}`, { massG: 12 }, { 'if-match': '1' })),
    ...[3, 4, 5].map((value) =>
      client.post(`/api/trials/${id}/outcomes`, {
        kind: 'dye left',
        vesselId: jar.id,
        value,
        grader: `${value}`,
      }),
    ),
    client.ask('PATCH', `/api/vessels/${jar.id}`, { conditions: { acid: 60 } }, { 'if-match': '1' }),
    client.ask('PATCH', `/api/skeins/${parent.id}`, { massG: 50 }, { 'if-match': '1' }),
  ])
  expect(answers.map((answer) => answer.status).filter((status) => status > 201)).toEqual([])
  const derived = async () =>
    (
      await sql`select skein_id, kind, basis, wear_key, value, readings_n, resolved from result
        order by skein_id, kind, basis, wear_key`.execute(db)
    ).rows
  const asTheyCame = await derived()
  expect(asTheyCame).toHaveLength(5 + 4 + 1)
  await rebuildResults(db)
  expect(await derived()).toEqual(asTheyCame)
})

test('one record sent many times at once is kept once', async () => {
  const { client, id } = await aTrial()
  const skein = { id: randomUUID(), code: 'A1' }
  const answers = await Promise.all(
    Array.from({ length: 8 }, () => client.post(`/api/trials/${id}/skeins`, skein)),
  )
  expect(answers.map((answer) => answer.status).sort()).toEqual([200, 200, 200, 200, 200, 200, 200, 201])
})

test('of several corrections of one reading at once, one is taken', async () => {
  const { parent, sitting, reading, tryReading } = await family()
  const { id: sittingId } = await sitting({ label: 'lamp' })
  const wrong = await reading(parent.id, sittingId, [50, 1, 2])
  const answers = await Promise.all(
    [51, 52, 53].map((l) =>
      tryReading(parent.id, sittingId, [l, 1, 2], { supersedes: wrong.id, reason: 'wrong line' }),
    ),
  )
  expect(answers.map((answer) => answer.status).sort()).toEqual([201, 409, 409])
})
