import { expect, test } from 'vitest'
import { made } from '#test/support/a-trial.ts'
import { type Client, clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

const bases = ['cone', 'silk']
const waters = ['soft', 'hard']

/** Vinegar, base and water, each in two levels, in three sessions; on silk in hard water too much dye is left. */
async function threeFactors(): Promise<{ client: Client; id: string }> {
  const client = clientOf(await emptyDatabase())
  const { id } = await made(client, '/api/trials', { title: 'Vinegar', question: 'How much?', pattern: 'P2' })
  const vinegar = [30, 60].map((value) => ({ label: String(value), value }))
  for (const [key, levels] of [
    ['acid', vinegar],
    ['base', bases.map((label) => ({ label }))],
    ['water', waters.map((label) => ({ label }))],
  ] as const)
    await made(client, `/api/trials/${id}/factors`, { key, stage: 'dye', levels })
  const condition = { outcome: 'dye left', wear: {}, end: 'low', against: 'none', statistic: 'every unit' }
  await made(client, `/api/trials/${id}/rules`, {
    conditions: [{ ...condition, atMost: 6, direction: 'smaller is better' }],
    plannedSessions: 3,
  })
  await client.post(`/api/trials/${id}/rules/1/lock`)
  const rows = [1, 2, 3].flatMap((run) =>
    bases.flatMap((base) =>
      waters.flatMap((water) =>
        [30, 60].map((ml) => [run, base, water, ml, base === 'silk' && water === 'hard' ? 20 : 3].join(',')),
      ),
    ),
  )
  await made(client, `/api/trials/${id}/table`, {
    text: ['run,base,water,vinegar_ml_per_100g,pct_dye_left', ...rows].join('\n'),
    columns: ['base', 'water'].map((heading) => ({ heading, as: 'level', factor: heading })),
    ownVessel: true,
  })
  return { client, id }
}

test('where three things are varied, every part and the whole has its own verdict and sheet, each recorded once', async () => {
  const { client, id } = await threeFactors()
  const { body: finding } = await client.get(`/api/trials/${id}/findings`)
  const parts: string[] = finding.within.levels.map((it: { id: string }) => it.id)
  expect(parts).toHaveLength(4)
  for (const part of parts) expect(part).toMatch(/^[0-9a-f-]{36}\+[0-9a-f-]{36}$/)
  const recorded = new Map<string, string>()
  for (const stratum of ['', ...parts]) {
    const within = stratum === '' ? {} : { within: stratum }
    const verdict = await client.post(`/api/trials/${id}/verdicts`, within)
    expect(verdict).toMatchObject({ status: 201, body: { stratum, withinLevelId: null, look: 1 } })
    expect(await client.post(`/api/trials/${id}/verdicts`, within)).toMatchObject({
      status: 200,
      body: { id: verdict.body.id },
    })
    const sheet = await client.post(`/api/trials/${id}/evidence-sheets`, within)
    expect(sheet).toMatchObject({ status: 201, body: { stratum, headline: verdict.body.headline } })
    recorded.set(stratum, verdict.body.answer)
  }
  expect(recorded.get('')).toBe('does-not-hold')
  expect(recorded.get(parts[3] ?? '')).toBe('does-not-hold')
  const { items } = (await client.get(`/api/trials/${id}/evidence-sheets`)).body
  expect(items).toHaveLength(5)
  expect(items.every((it: { superseded: boolean }) => !it.superseded)).toBe(true)
})
