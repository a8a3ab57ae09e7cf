import { type Kysely, sql } from 'kysely'
import { expect, test } from 'vitest'
import { rebuildResults } from '#api/results/rebuild-results.ts'
import type { Database } from '#db/tables.ts'
import { aTrial, changed, made } from '#test/support/a-trial.ts'

/** Everything that is derived, but for the ids and times of its own rows. */
async function derivedRows(db: Kysely<Database>) {
  const { rows: results } = await sql`select to_jsonb(result) - 'id' - 'created_at' as row from result
    order by skein_id, kind, fibre, basis, wear_key`.execute(db)
  const { rows: changes } = await sql`select to_jsonb(change) - 'id' - 'created_at' as row from change
    order by reading_id, basis`.execute(db)
  const { rows: readings } = await sql`select to_jsonb(reading) as row from reading order by id`.execute(db)
  return { results, changes, readings }
}

/** A trial with something of everything, written in an awkward order: results first, what they hang on later. */
async function aFullTrial() {
  const trial = await aTrial({ conditions: { depth: 1 } })
  const { client, id, skein, sitting, reading, outcome } = trial
  const parent = await skein({ massG: 50 })
  const part = await skein({ code: 'A1 wash', cutFromId: parent.id })
  const foil = await skein({ code: 'A1 foil', cutFromId: parent.id })
  const twin = await skein({ code: 'A1 twin', role: 'twin', cutFromId: parent.id })
  const wool = await skein({ code: 'wool', role: 'companion', fibre: 'wool' })
  const before = await sitting({ at: '2026-02-01T10:00:00Z' })
  const after = await sitting({ label: 'after', at: '2026-03-01T10:00:00Z' })
  await reading(part.id, after.id, [47, 22, -6], { wear: undefined })
  await reading(foil.id, after.id, [46, 24, -6.5])
  await reading(twin.id, after.id, [45.2, 24.8, -7])
  await reading(wool.id, after.id, [85, -4, -3], { wear: { W2: 3 } })
  const wrong = await reading(parent.id, before.id, [40, 25, -7])
  await reading(parent.id, before.id, [45, 25, -7], { supersedes: wrong.id, reason: 'wrong line' })
  await reading(wool.id, before.id, [93, 0, 3])
  await outcome({
    kind: 'staining',
    fibre: 'wool',
    skeinId: part.id,
    wear: { W2: 3 },
    text: '4',
    grader: 'A',
  })
  await outcome({
    kind: 'staining',
    fibre: 'wool',
    skeinId: part.id,
    wear: { W2: 3 },
    text: '3',
    grader: 'B',
  })
  await made(client, `/api/trials/${id}/rinses`, {
    items: [3, 4].map((clarity, index) => ({ skeinId: parent.id, number: index + 1, clarity })),
  })
  const session = await trial.session({ altitudeM: 300 })
  const pot = await trial.vessel(session.id, { stage: 'dye', kind: 'pot', label: 'pot' })
  const jar = await trial.vessel(session.id, { stage: 'wash', kind: 'jar', label: 'jar' })
  await outcome({ kind: 'dye left', vesselId: pot.id, value: 3 })
  await trial.place(pot.id, parent.id)
  await trial.place(jar.id, part.id)
  await trial.place(jar.id, foil.id, { covered: true })
  await made(client, `/api/vessels/${jar.id}/exposures`, {
    protocol: 'W2',
    cycles: 3,
    endedAt: '2026-02-10T10:00:00Z',
  })
  await changed(client, `/api/vessels/${pot.id}`, 1, { conditions: { acid: 60 } })
  const standard = await skein({ code: 'kept' })
  await reading(standard.id, before.id, [44, 25, -7])
  await changed(client, `/api/skeins/${standard.id}`, 1, { role: 'standard' })
  return trial
}

test('what was derived as the records came in is what is derived from all of them at once', async () => {
  const { db } = await aFullTrial()
  const before = await derivedRows(db)
  // The washed part has its own change, its covered half, its twin and the standard; nothing of these is missing.
  const bases = await sql<{ basis: string }>`select distinct basis from change order by basis`.execute(db)
  expect(bases.rows.map((row) => row.basis)).toEqual(['companion', 'covered', 'own', 'standard', 'twin'])
  expect(await rebuildResults(db)).toEqual({ trials: 1, skeins: 6, readings: 8 })
  expect(await derivedRows(db)).toEqual(before)
})

test('what was spoiled is mended', async () => {
  const { db } = await aFullTrial()
  const before = await derivedRows(db)
  await sql`delete from change where basis = 'own'`.execute(db)
  await sql`update result set value = value + 1, resolved = '{}'`.execute(db)
  await sql`update reading set mean_l = 1, mcdm = 9, spots_n = 50, clipped = true`.execute(db)
  await sql`update reading set wear = '{"W2": 99}' where wear_from = 'exposures'`.execute(db)
  expect(await derivedRows(db)).not.toEqual(before)
  await rebuildResults(db)
  expect(await derivedRows(db)).toEqual(before)
})
