import { expect, test } from 'vitest'
import { aTrial, changed, made } from '#test/support/a-trial.ts'
import type { Client } from '#test/support/client.ts'

type Row = Readonly<Record<string, unknown>> & { readonly id: string }
type Records = Record<string, Map<string, Row>>
type JournalRow = {
  readonly noun: string
  readonly recordId: string
  readonly action: string
  readonly before: Row | null
  readonly after: Row | null
}

const items = async (client: Client, path: string): Promise<Row[]> =>
  (await client.get(`${path}?limit=500`)).body.items
const byId = (rows: readonly Row[]) => new Map(rows.map((row) => [row.id, row]))

/** Everything of a trial that is judged, as the API shows it. */
async function recordsOf(client: Client, at: string): Promise<Records> {
  const sessions = await items(client, `${at}/sessions`)
  const vessels: Row[] = []
  for (const { id } of sessions) vessels.push(...(await items(client, `/api/sessions/${id}/vessels`)))
  const placements: Row[] = []
  for (const { id } of vessels) placements.push(...(await items(client, `/api/vessels/${id}/placements`)))
  return {
    session: byId(sessions),
    vessel: byId(vessels),
    placement: byId(placements),
    skein: byId(await items(client, `${at}/skeins`)),
    treatment: byId(await items(client, `${at}/treatments`)),
    reading: byId(await items(client, `${at}/readings`)),
  }
}

/** Takes one change back. */
function undo(records: Records, { noun, recordId, action, before, after }: JournalRow): void {
  const rows = records[noun]
  if (!rows) throw new Error(noun)
  if (action === 'added') rows.delete(recordId)
  if (action === 'corrected' && after) rows.delete(after.id)
  if (before) rows.set(recordId, before)
}

test('taken back one by one, the journal gives the records as they were before the first change', async () => {
  const trial = await aTrial()
  const { client, short, long } = trial
  const at = `/api/trials/${trial.id}`
  const session = await trial.session()
  const vessel = await trial.vessel(session.id)
  const other = await trial.vessel(session.id, { label: 'packet 2' })
  const skein = await trial.skein()
  const part = await trial.skein({ code: 'A1 dark', cutFromId: skein.id })
  const placement = await trial.place(vessel.id, skein.id)
  const away = await trial.place(other.id, part.id)
  const treatment = await made(client, `${at}/treatments`, { levelId: short, vesselId: vessel.id })
  await made(client, `${at}/treatments`, { levelId: long, vesselId: other.id })
  const sitting = await trial.sitting()
  const reading = await trial.reading(skein.id, sitting.id, [50, 1, 2])
  const before = await recordsOf(client, at)

  const remove = (path: string, version = 1) =>
    client.ask('DELETE', path, undefined, { 'if-match': String(version) })
  const answers = [
    await remove(`/api/treatments/${treatment.id}`),
    await client.post(`${at}/treatments`, { levelId: long, vesselId: vessel.id }),
    await changed(client, `/api/vessels/${vessel.id}`, 1, { status: 'lost', lostReason: 'torn', place: '3' }),
    await changed(client, `/api/vessels/${vessel.id}`, 2, { status: 'planned' }),
    await changed(client, `/api/skeins/${part.id}`, 3, { role: 'dark twin', conditions: { hold: 20 } }),
    await changed(client, `/api/placements/${placement.id}`, 1, { inAt: '2026-01-01T00:00:00Z' }),
    await remove(`/api/vessels/${other.id}`),
    await remove(`/api/placements/${away.id}`),
    await client.post(`/api/sessions/${session.id}/vessels`, { stage: 'wash', kind: 'jar', label: 'jar' }),
    await trial.tryReading(skein.id, sitting.id, [51, 1, 2], { supersedesId: reading.id, reason: 'misread' }),
  ]
  expect(answers.map((it) => it.status)).toEqual([204, 201, 200, 200, 200, 200, 204, 404, 201, 201])

  const records = await recordsOf(client, at)
  expect(records).not.toEqual(before)
  const journal: JournalRow[] = (await client.get(`${at}/journal`)).body.items
  for (const row of journal.toReversed()) undo(records, row)
  expect(records).toEqual(before)
})
