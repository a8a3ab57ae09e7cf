import { expect, test } from 'vitest'
import spectra from '#test/reference/colour/spectra-checks.json' with { type: 'json' }
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import { rowCounts } from '#test/support/row-counts.ts'

async function studio() {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const trial = await client.post('/api/trials', { title: 'A', question: 'B?' })
  const id: string = trial.body.id
  for (const code of ['S1', 'S2']) await client.post(`/api/trials/${id}/skeins`, { code, status: 'done' })
  return { db, client, id }
}

const cgats = (rows: string[]) =>
  [
    'CGATS.17',
    'NUMBER_OF_FIELDS 4',
    'BEGIN_DATA_FORMAT',
    'SAMPLE_ID LAB_L LAB_A LAB_B',
    'END_DATA_FORMAT',
    `NUMBER_OF_SETS ${rows.length}`,
    'BEGIN_DATA',
    ...rows,
    'END_DATA',
  ].join('\n')

test('a CGATS file is checked, then kept: rows of one skein are its spots', async () => {
  const { db, client, id } = await studio()
  const text = cgats(['S1 50.0 10.0 -5.0', 'S1 50.4 10.2 -5.2', 'S2 61.0 3.0 20.0'])
  const before = await rowCounts(db)
  const check = await client.post(`/api/trials/${id}/instrument-file?check=true`, { text })
  expect(check.body).toMatchObject({ readings: 2, spots: 3, from: 'lab', faults: [] })
  expect(await rowCounts(db)).toEqual(before)
  const kept = await client.post(`/api/trials/${id}/instrument-file`, { text, label: 'before' })
  expect(kept.status).toBe(201)
  const readings = await client.get(`/api/trials/${id}/readings`)
  const first = readings.body.items.find((it: { spotsN: number }) => it.spotsN === 2)
  expect([first.meanL, first.meanA, first.meanB]).toEqual(
    [50.2, 10.1, -5.1].map((it) => expect.closeTo(it, 9)),
  )
})

// The spectrum and its L*a*b* under D65/10° are of test/reference/colour/spectra-checks.json (see its own sources).
test('a spectrum by wavelength becomes L*a*b* for D65 and 10°', async () => {
  const { client, id } = await studio()
  const sample = spectra.sets[0]?.samples[0]
  if (!sample) throw new Error('The reference has no spectrum.')
  const nm = sample.R.map((_: number, i: number) => 380 + 10 * i)
  const text = [`SAMPLE_ID,${nm.map((it: number) => `${it} nm`).join(',')}`, `S1,${sample.R.join(',')}`].join(
    '\n',
  )
  const kept = await client.post(`/api/trials/${id}/instrument-file`, { text })
  expect(kept.body).toMatchObject({ from: 'spectrum', readings: 1 })
  const readings = await client.get(`/api/trials/${id}/readings`)
  expect(Math.abs(readings.body.items[0].meanL - (sample.expected['D65/10deg'].Lab[0] ?? 0))).toBeLessThan(
    0.005,
  )
})

test('a wrong file is refused with line and reason, and nothing of it is stored', async () => {
  const { db, client, id } = await studio()
  const before = await rowCounts(db)
  const answer = await client.post(`/api/trials/${id}/instrument-file`, {
    text: cgats(['S1 50 10 -5', 'S9 60 0 0', 'S2 x 0 0']),
  })
  expect(answer.status).toBe(422)
  expect(answer.body.errors.map((it: { detail: string }) => it.detail)).toEqual([
    expect.stringMatching(/^Line 9: No skein of this trial has the code “S9”/),
    expect.stringMatching(/^Line 10: /),
  ])
  expect(await rowCounts(db)).toEqual(before)
  expect((await client.post(`/api/trials/${id}/instrument-file`, { text: 'nothing' })).status).toBe(422)
})
