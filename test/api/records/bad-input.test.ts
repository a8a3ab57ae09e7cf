import { randomUUID } from 'node:crypto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { aTrial } from '#test/support/a-trial.ts'

type Address = {
  readonly method: 'POST' | 'PATCH'
  readonly path: string
  readonly good: Record<string, unknown>
}

/** Every address that takes a body, with one that it takes, and ids that exist to be named in the wrong places. */
async function addresses() {
  const trial = await aTrial()
  const session = await trial.session()
  const vessel = await trial.vessel(session.id)
  const skein = await trial.skein()
  const sitting = await trial.sitting()
  const ids = [trial.id, session.id, vessel.id, skein.id, sitting.id, trial.short, randomUUID()]
  const at = `/api/trials/${trial.id}`
  const skeinId = skein.id
  const conditions = { hold: 20 }
  const posts: [string, Record<string, unknown>][] = [
    ['/api/bases', { name: 'oat', composition: [{ fibre: 'wool', percent: 100 }], naturalL: 80 }],
    ['/api/dyes', { name: 'teal', gramsPerTeaspoon: 3 }],
    ['/api/stocks', { label: 'teal', parts: [], madeToMl: 100, madeOn: '2026-01-01' }],
    ['/api/instruments', { name: 'bench', method: 'instrument', sdL: 0.1, checkedOn: '2026-01-01' }],
    [
      '/api/sittings',
      { method: 'photo', label: 'x', at: '2026-01-01T00:00:00Z', apertureMm: 8, person: 'A' },
    ],
    [`${at}/sessions`, { label: 'run', heldOn: '2026-01-01', conditions, altitudeM: 3, note: 'x' }],
    [`${at}/skeins`, { code: 'A', massG: 5, conditions, cutFromId: skeinId, cutAt: '2026-01-01T00:00:00Z' }],
    [`${at}/treatments`, { levelId: trial.short, skeinId }],
    [`${at}/readings`, { skeinId, sittingId: sitting.id, wear: { W2: 3 }, spots: [{ l: 50, a: 1, b: 2 }] }],
    [`${at}/outcomes`, { skeinId, kind: 'staining', value: 4, fibre: 'wool', grader: 'A', wear: { W2: 3 } }],
    [`${at}/rinses`, { skeinId, number: 1, clarity: 3, minutes: 5 }],
    [`${at}/stamps`, { sessionId: session.id, kind: 'added', at: '2026-01-01T00:00:00Z', what: 'x', ml: 3 }],
    [
      `/api/sessions/${session.id}/vessels`,
      { stage: 'dye', kind: 'pot', label: 'x', drawnOrder: 3, conditions },
    ],
    [`/api/vessels/${vessel.id}/placements`, { skeinId, place: 'left', inAt: '2026-01-01T00:00:00Z' }],
    [`/api/vessels/${vessel.id}/exposures`, { protocol: 'W2', cycles: 3, endedAt: '2026-01-01T00:00:00Z' }],
  ]
  const patches: [string, Record<string, unknown>][] = [
    [`/api/sessions/${session.id}`, { label: 'run', conditions }],
    [`/api/vessels/${vessel.id}`, { status: 'done', drawnOrder: 3 }],
    [`/api/skeins/${skeinId}`, { massG: 5, role: 'twin' }],
    [`/api/sittings/${sitting.id}`, { illuminant: 'A', at: '2026-01-01T00:00:00Z' }],
    [at, { title: 'x', conditions }],
  ]
  const all: Address[] = [
    ...posts.map(([path, good]) => ({ method: 'POST' as const, path, good })),
    ...patches.map(([path, good]) => ({ method: 'PATCH' as const, path, good })),
  ]
  return { client: trial.client, ids, all }
}

const texts = [
  '',
  ' ',
  '\u0000',
  'a\u0000b',
  '\ud800',
  '𝄞'.repeat(3000),
  '12,5',
  '-0',
  '1e999',
  'NaN',
  '3-4',
  '{"',
]
const times = ['0000-01-01', '9999-12-31', '0000-01-01T00:00:00Z', '2026-02-30', '9999-12-31T23:59:59+14:59']
const numbers = [0, -0, -1, 0.1, 1e21, 1e300, -1e300, 5e-324, 2 ** 31, 2 ** 53, 40, 5]
const words = [
  'lost',
  'treated',
  'staining',
  'W2',
  'X1',
  'set',
  'jar',
  'photo',
  'lid on',
  'blue wool',
  'standard',
]
const keys = [
  ...[
    'id',
    'name',
    'label',
    'code',
    'title',
    'kind',
    'stage',
    'method',
    'role',
    'status',
    'lostReason',
    'at',
  ],
  ...[
    'composition',
    'parts',
    'madeToMl',
    'madeOn',
    'conditions',
    'skeinId',
    'vesselId',
    'sessionId',
    'levelId',
  ],
  ...[
    'sittingId',
    'spots',
    'wear',
    'placing',
    'takenAt',
    'value',
    'text',
    'fibre',
    'number',
    'clarity',
    'grader',
  ],
  ...[
    'protocol',
    'cycles',
    'startedAt',
    'endedAt',
    'due',
    'cutFromId',
    'cutAt',
    'heldOn',
    'massG',
    'supersedes',
  ],
  ...[
    'reason',
    'entered',
    'drawnOrder',
    'altitudeM',
    'inAt',
    'outAt',
    'blueWoolNumber',
    'companionId',
    'unit',
  ],
]

/** What a careless script might send: what is taken, with some of it spoiled, alone or in a list. */
function anyBody({ good }: Address, ids: readonly string[]): fc.Arbitrary<unknown> {
  const leaf = fc.oneof(
    fc.constantFrom(...ids),
    fc.constantFrom(...texts),
    fc.constantFrom(...times),
    fc.constantFrom(...numbers),
    fc.constantFrom(...words),
    fc.constantFrom(null, true, false),
  )
  const colour = fc.record({ l: fc.constantFrom(0, 50, '50,5', 101), a: fc.constant(1), b: fc.constant(2) })
  const value = fc.oneof(
    { weight: 8, arbitrary: leaf },
    { weight: 1, arbitrary: fc.array(colour, { maxLength: 3 }) },
    {
      weight: 1,
      arbitrary: fc.dictionary(
        fc.constantFrom('W2', 'X1 days', 'hold', 'entered', '__proto__', 'percent'),
        leaf,
      ),
    },
    { weight: 1, arbitrary: fc.array(leaf, { maxLength: 3 }) },
  )
  const spoiled = fc
    .dictionary(fc.oneof(fc.constantFrom(...Object.keys(good)), fc.constantFrom(...keys)), value, {
      minKeys: 0,
      maxKeys: 2,
    })
    .map((wrong) => ({ ...good, ...wrong }))
  return fc.oneof(
    { weight: 8, arbitrary: spoiled },
    { weight: 2, arbitrary: fc.array(spoiled, { maxLength: 3 }).map((items) => ({ items })) },
    { weight: 1, arbitrary: value },
  )
}

test('no body makes the tool break: it is kept, or refused in words', async () => {
  const { client, ids, all } = await addresses()
  const asked = fc
    .constantFrom(...all)
    .chain((address) => anyBody(address, ids).map((body) => ({ ...address, body })))
  const versions = new Map<string, number>()
  const taken = new Set<string>()
  await fc.assert(
    fc.asyncProperty(asked, async ({ method, path, body }) => {
      const version = versions.get(path) ?? 1
      const answer = await client.ask(method, path, body, { 'if-match': String(version) })
      expect(answer.status, `${method} ${path} ${JSON.stringify(answer.body)}`).toBeLessThan(500)
      if (answer.status >= 400) expect(answer.body.detail).not.toBe('')
      else taken.add(path)
      if (method === 'PATCH' && answer.status === 200) versions.set(path, answer.body.version)
    }),
    { numRuns: 400 },
  )
  // Else the test would only ever knock at the door.
  expect(taken.size).toBeGreaterThan(10)
}, 120_000)

test('text that the database cannot hold is refused, text that it can is kept', async () => {
  const { client } = await addresses()
  const post = (name: string) => client.post('/api/dyes', { name })
  expect((await post('a\u0000b')).status).toBe(422)
  expect((await post('\ud800')).status).toBe(422)
  expect((await post('x'.repeat(201))).body.errors[0].pointer).toBe('#/name')
  expect((await post('ΔE00 𝄞 “teal”')).body.name).toBe('ΔE00 𝄞 “teal”')
})

test('a number beyond every range is refused at its place', async () => {
  const { client } = await addresses()
  const answer = await client.post('/api/instruments', '{"name":"x","method":"eye","sdL":1e999}')
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/sdL' }] } })
})

test('a list of nothing, of too much, and of no list are refused', async () => {
  const { client } = await addresses()
  expect((await client.post('/api/dyes', { items: [] })).status).toBe(422)
  const many = Array.from({ length: 5001 }, (_, index) => ({ name: `dye ${index}` }))
  expect((await client.post('/api/dyes', { items: many })).body.errors[0].pointer).toBe('#/items')
  expect((await client.post('/api/dyes', { items: 'x' })).status).toBe(422)
  expect((await client.post('/api/dyes', [{ name: 'x' }])).status).toBe(422)
  expect((await client.post('/api/dyes', 'not json')).status).toBe(400)
})

test('an id sent twice in one list is refused', async () => {
  const { client } = await addresses()
  const id = randomUUID()
  const answer = await client.post('/api/dyes', {
    items: [
      { id, name: 'a' },
      { id, name: 'a' },
    ],
  })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/items/1/id' }] } })
})
