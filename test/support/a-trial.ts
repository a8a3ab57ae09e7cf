import type { Kysely } from 'kysely'
import { resultsOf } from '#db/results.ts'
import type { Database } from '#db/tables.ts'
import { type Client, clientOf } from './client.ts'
import { emptyDatabase } from './empty-database.ts'

type Lab = readonly [number, number, number]

/** An empty studio with one trial of steam times in it, and short ways of writing its records through the API. */
export async function aTrial(sent: object = {}) {
  const db = await emptyDatabase()
  return trialIn(db, clientOf(db), sent)
}

/** Another trial in the same studio. */
export async function trialIn(db: Kysely<Database>, client: Client, sent: object = {}) {
  const { id } = await made(client, '/api/trials', { title: 'Steam', question: 'How short?', ...sent })
  const factor = await made(client, `/api/trials/${id}/factors`, {
    key: 'steamTime',
    levels: [{ label: '10' }, { label: '75' }],
  })
  const [short, long] = factor.levels
  return {
    db,
    client,
    id: String(id),
    factorId: String(factor.id),
    short: String(short.id),
    long: String(long.id),
    session: (body: object = {}) => made(client, `/api/trials/${id}/sessions`, { label: 'run 1', ...body }),
    vessel: (sessionId: string, body: object = {}) =>
      made(client, `/api/sessions/${sessionId}/vessels`, {
        stage: 'set',
        kind: 'packet',
        label: 'packet 1',
        ...body,
      }),
    skein: (body: object = {}) => made(client, `/api/trials/${id}/skeins`, { code: 'A1', ...body }),
    place: (vesselId: string, skeinId: string, body: object = {}) =>
      made(client, `/api/vessels/${vesselId}/placements`, { skeinId, ...body }),
    sitting: (body: object = {}) =>
      made(client, '/api/sittings', { trialId: id, method: 'instrument', label: 'before', ...body }),
    reading: (skeinId: string, sittingId: string, lab: Lab, body: object = {}) =>
      made(client, `/api/trials/${id}/readings`, readingOf(skeinId, sittingId, lab, body)),
    tryReading: (skeinId: string, sittingId: string, lab: Lab, body: object = {}) =>
      client.post(`/api/trials/${id}/readings`, readingOf(skeinId, sittingId, lab, body)),
    outcome: (body: object) => made(client, `/api/trials/${id}/outcomes`, body),
    results: (kind: string) => resultsOf(db, String(id), { kinds: [kind] }),
  }
}

function readingOf(skeinId: string, sittingId: string, [l, a, b]: Lab, body: object) {
  return { skeinId, sittingId, wear: {}, spots: [{ l, a, b }], ...body }
}

/** Posts what must be taken, and gives what is kept. */
export async function made(client: Client, path: string, body: object) {
  const answer = await client.post(path, body)
  if (answer.status !== 201)
    throw new Error(`${path} answered ${answer.status}: ${JSON.stringify(answer.body)}`)
  return answer.body
}

/** Changes a record at the version that it was last seen at. */
export async function changed(client: Client, path: string, version: number, body: object) {
  return client.ask('PATCH', path, body, { 'if-match': `"${version}"` })
}
