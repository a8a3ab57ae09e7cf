import { expect, test } from 'vitest'
import { aTrial, changed, made } from '#test/support/a-trial.ts'
import { everyNoun } from '#test/support/every-noun.ts'

type World = Awaited<ReturnType<typeof aWorld>>
type Answer = { readonly status: number; readonly body: unknown }

/** A trial with one of everything; with a reading in it, or before the first one. */
async function aWorld({ read }: { readonly read: boolean }) {
  const trial = await aTrial()
  const { client } = trial
  const session = await trial.session()
  const vessel = await trial.vessel(session.id)
  const skein = await trial.skein()
  const other = await trial.skein({ code: 'A2' })
  const sitting = await trial.sitting()
  const placement = await trial.place(vessel.id, skein.id)
  const at = `/api/trials/${trial.id}`
  const treatment = await made(client, `${at}/treatments`, { levelId: trial.short, vesselId: vessel.id })
  const exposure = await made(client, `/api/vessels/${vessel.id}/exposures`, { protocol: 'W2', cycles: 1 })
  const rinse = await made(client, `${at}/rinses`, { skeinId: skein.id, number: 1 })
  const stamp = await made(client, `${at}/stamps`, {
    sessionId: session.id,
    kind: 'in',
    at: '2026-01-01T00:00:00Z',
  })
  const reading = read ? await trial.reading(skein.id, sitting.id, [50, 1, 2]) : undefined
  const outcome = read ? await trial.outcome({ kind: 'felting', skeinId: skein.id, value: 2 }) : undefined
  const ids = { session, vessel, skein, other, sitting, placement, treatment, exposure, rinse, stamp }
  return { trial, client, at, ...ids, reading, outcome }
}

const correction = (it: { readonly id: string } | undefined) =>
  it ? { supersedesId: it.id, reason: 'misread' } : {}
const remove = (w: World, path: string, version = 1) =>
  w.client.ask('DELETE', path, undefined, { 'if-match': `"${version}"` })

/** Every address that writes a noun that is judged, with one thing that it may be asked. */
const writes: Readonly<Record<string, (w: World) => Promise<Answer>>> = {
  'POST /api/trials/{id}/sessions': (w) => w.client.post(`${w.at}/sessions`, { label: 'run 2' }),
  'PATCH /api/sessions/{id}': (w) =>
    changed(w.client, `/api/sessions/${w.session.id}`, 1, { heldOn: '2026-02-01' }),
  'DELETE /api/sessions/{id}': async (w) => {
    const empty = await w.trial.session({ label: 'empty' })
    return remove(w, `/api/sessions/${empty.id}`)
  },
  'POST /api/sessions/{id}/vessels': (w) =>
    w.client.post(`/api/sessions/${w.session.id}/vessels`, {
      stage: 'set',
      kind: 'packet',
      label: 'packet 2',
    }),
  'PATCH /api/vessels/{id}': (w) =>
    changed(w.client, `/api/vessels/${w.vessel.id}`, 1, { equipment: 'pot 2' }),
  'DELETE /api/vessels/{id}': async (w) => {
    const empty = await w.trial.vessel(w.session.id, { label: 'empty' })
    return remove(w, `/api/vessels/${empty.id}`)
  },
  'POST /api/trials/{id}/skeins': (w) => w.client.post(`${w.at}/skeins`, { code: 'A3' }),
  'PATCH /api/skeins/{id}': (w) => changed(w.client, `/api/skeins/${w.skein.id}`, 1, { role: 'blank' }),
  'DELETE /api/skeins/{id}': (w) => remove(w, `/api/skeins/${w.other.id}`),
  'POST /api/vessels/{id}/placements': (w) =>
    w.client.post(`/api/vessels/${w.vessel.id}/placements`, { skeinId: w.other.id }),
  'PATCH /api/placements/{id}': (w) =>
    changed(w.client, `/api/placements/${w.placement.id}`, 1, { covered: true }),
  'DELETE /api/placements/{id}': (w) => remove(w, `/api/placements/${w.placement.id}`),
  'POST /api/trials/{id}/treatments': (w) =>
    w.client.post(`${w.at}/treatments`, { levelId: w.trial.long, skeinId: w.other.id }),
  'DELETE /api/treatments/{id}': (w) => remove(w, `/api/treatments/${w.treatment.id}`),
  'POST /api/sittings': (w) =>
    w.client.post('/api/sittings', { trialId: w.trial.id, method: 'instrument', label: 'after' }),
  'PATCH /api/sittings/{id}': (w) =>
    changed(w.client, `/api/sittings/${w.sitting.id}`, 1, { illuminant: 'A' }),
  'DELETE /api/sittings/{id}': async (w) => {
    const empty = await w.trial.sitting({ label: 'empty' })
    return remove(w, `/api/sittings/${empty.id}`)
  },
  'POST /api/vessels/{id}/exposures': (w) =>
    w.client.post(`/api/vessels/${w.vessel.id}/exposures`, {
      protocol: 'W2',
      cycles: 2,
      ...correction(w.exposure),
    }),
  'POST /api/trials/{id}/rinses': (w) =>
    w.client.post(`${w.at}/rinses`, { skeinId: w.skein.id, number: 1, clarity: 4, ...correction(w.rinse) }),
  'POST /api/trials/{id}/stamps': (w) =>
    w.client.post(`${w.at}/stamps`, {
      ...{ sessionId: w.session.id, kind: 'out', at: '2026-01-01T00:00:00Z' },
      ...correction(w.stamp),
    }),
  'POST /api/trials/{id}/readings': (w) =>
    w.trial.tryReading(w.skein.id, w.sitting.id, [40, 1, 2], correction(w.reading)),
  'POST /api/trials/{id}/outcomes': (w) =>
    w.client.post(`${w.at}/outcomes`, {
      kind: 'felting',
      skeinId: w.skein.id,
      value: 3,
      ...correction(w.outcome),
    }),
}

/** What belongs to no trial until a piece of one lies in it. */
const shared = ['POST /api/sessions']
/** Files of several records: they have tests of their own. */
const files = ['POST /api/trials/{id}/instrument-file']

const journal = async (w: World) => (await w.client.get(`${w.at}/journal`)).body.items

test('every address that writes what is judged is asked here', async () => {
  const { client } = await aTrial()
  const tags = new Set(everyNoun.filter((it) => 'judged' in it).map((it) => it.plural))
  const paths: Record<string, Record<string, { tags?: string[] }>> = (await client.get('/api/openapi.json'))
    .body.paths
  const writing = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).flatMap(([method, { tags: said = [] }]) =>
      method !== 'get' && said.some((tag) => tags.has(tag)) ? [`${method.toUpperCase()} ${path}`] : [],
    ),
  )
  expect(writing.filter((it) => !shared.includes(it) && !files.includes(it)).sort()).toEqual(
    Object.keys(writes).sort(),
  )
})

test.each(Object.entries(writes))(
  '%s leaves nothing in the journal before the first reading',
  async (_name, write) => {
    const w = await aWorld({ read: false })
    expect((await write(w)).status).toBeLessThan(300)
    expect(await journal(w)).toEqual([])
  },
)

test.each(Object.entries(writes))('%s stays in the journal after it', async (name, write) => {
  const w = await aWorld({ read: true })
  expect(await journal(w)).toEqual([])
  expect((await write(w)).status).toBeLessThan(300)
  const [row, ...others] = (await journal(w)).slice(name.startsWith('DELETE') ? -1 : 0)
  const action = name.startsWith('PATCH') ? 'changed' : name.startsWith('DELETE') ? 'removed' : undefined
  expect(others).toEqual([])
  expect(row).toMatchObject({ who: null, noun: expect.any(String), recordId: expect.any(String) })
  expect(action === undefined ? ['added', 'corrected'] : [action]).toContain(row.action)
  const noun = everyNoun.find((it) => it.noun === row.noun)
  for (const side of [row.before, row.after])
    if (side !== null) expect(Object.keys(side).sort()).toEqual(Object.keys(noun?.shown.shape ?? {}).sort())
  expect(row.before === null).toBe(row.action === 'added')
  expect(row.after === null).toBe(row.action === 'removed')
})
