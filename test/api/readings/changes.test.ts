import { expect, test } from 'vitest'
import { aTrial, changed } from '#test/support/a-trial.ts'

/** A trial with a skein, and a sitting before and one after. */
async function beforeAndAfter({ before = {}, after = {} }: { before?: object; after?: object } = {}) {
  const trial = await aTrial()
  const skein = await trial.skein()
  const first = await trial.sitting({ at: '2026-02-01T10:00:00Z', ...before })
  const second = await trial.sitting({ label: 'after', at: '2026-02-05T10:00:00Z', ...after })
  return { ...trial, skeinId: String(skein.id), first: String(first.id), second: String(second.id) }
}

const washed = { wear: { W2: 3 } }

test('a worn reading is held against the untouched one before it', async () => {
  const { client, reading, skeinId, first, second } = await beforeAndAfter()
  const before = await reading(skeinId, first, [45, 25, -7])
  const after = await reading(skeinId, second, [47, 22, -6], washed)
  const { body } = await client.get(`/api/readings/${after.id}`)
  expect(body.changes).toHaveLength(1)
  const [change] = body.changes
  expect(change).toMatchObject({ basis: 'own', againstIds: [before.id], dL: 2, dA: -3, dB: 1, grade: '3' })
  // Checked elsewhere: the pair (45,25,−7)→(47,22,−6) of the trade's worked checks, ΔE00 2.504, ΔE_F 3.241
  expect(change.de00).toBeCloseTo(2.504, 3)
  expect(change.deF).toBeCloseTo(3.241, 3)
  // √(4 + 9 + 1)
  expect(change.de76).toBeCloseTo(3.741657, 6)
})

test('the beginning has no change, and an untouched skein read again shows drift from it', async () => {
  const { client, reading, results, skeinId, first, second } = await beforeAndAfter()
  const before = await reading(skeinId, first, [36.4, -14.6, -14.1])
  const again = await reading(skeinId, second, [36.9, -14.4, -13.8])
  expect((await client.get(`/api/readings/${before.id}`)).body.changes).toEqual([])
  expect((await client.get(`/api/readings/${again.id}`)).body.changes).toMatchObject([
    { basis: 'own', againstIds: [before.id] },
  ])
  const [row] = await results('dE00')
  // The pair (36.4,−14.6,−14.1)→(36.9,−14.4,−13.8) of the trade's worked checks: ΔE00 0.464
  expect(row?.value).toBeCloseTo(0.464, 3)
  expect(row).toMatchObject({ wearKey: '', basis: 'own' })
})

test('several placings are one mean colour before there is one difference', async () => {
  const { reading, results, skeinId, first, second } = await beforeAndAfter()
  // Means of L*, a*, b*: (45, 25, −7) before and (47, 22, −6) after
  await reading(skeinId, first, [44, 24, -8])
  await reading(skeinId, first, [46, 26, -6], { placing: 2 })
  await reading(skeinId, second, [48, 23, -5], washed)
  await reading(skeinId, second, [46, 21, -7], { ...washed, placing: 2 })
  const [row] = await results('dE00')
  expect(row?.value).toBeCloseTo(2.504, 3)
  expect(row).toMatchObject({ readingsN: 2, spotsN: 2, wearKey: 'W2=3', wearAmount: 3, dL: 2, dA: -3, dB: 1 })
})

test('of several beginnings the nearest before counts', async () => {
  const { client, sitting, reading, skeinId, first, second } = await beforeAndAfter()
  const between = await sitting({ label: 'between', at: '2026-02-03T10:00:00Z' })
  const later = await sitting({ label: 'later', at: '2026-02-09T10:00:00Z' })
  await reading(skeinId, first, [44, 0, 0])
  const nearest = await reading(skeinId, between.id, [45, 0, 0])
  await reading(skeinId, later.id, [46, 0, 0])
  const after = await reading(skeinId, second, [50, 0, 0], washed)
  expect((await client.get(`/api/readings/${after.id}`)).body.changes[0].againstIds).toEqual([nearest.id])
})

test('a part that was not read before takes the beginning of its parent', async () => {
  const { client, skein, reading, skeinId, first, second } = await beforeAndAfter()
  const part = await skein({ code: 'A1 wash', cutFromId: skeinId })
  const before = await reading(skeinId, first, [45, 25, -7])
  const after = await reading(part.id, second, [47, 22, -6], washed)
  expect((await client.get(`/api/readings/${after.id}`)).body.changes).toMatchObject([
    { basis: 'own', againstIds: [before.id] },
  ])
})

test.each([
  [{ illuminant: 'A' }, 'The illuminant differs: A and D65.'],
  [{ observer: '2°' }, 'The observer differs: 2° and 10°.'],
  [{ geometry: '45/0' }, 'The geometry differs: 45/0 and not recorded.'],
  [{ apertureMm: 8 }, 'The aperture differs: 8 and not recorded.'],
  [{ method: 'photo' }, 'One is by photo and the other by instrument.'],
])(
  'measured otherwise (%o) nothing is compared, and the reason stands with the reading',
  async (after, reason) => {
    const { client, reading, results, skeinId, first, second } = await beforeAndAfter({ after })
    await reading(skeinId, first, [45, 25, -7])
    const worn = await reading(skeinId, second, [47, 22, -6], washed)
    expect(worn.doubts).toEqual([{ pointer: '#', detail: `Not compared. ${reason}` }])
    expect((await client.get(`/api/readings/${worn.id}`)).body).toMatchObject({
      changes: [],
      notCompared: [{ basis: 'own', reason }],
    })
    expect(await results('dE00')).toEqual([])
  },
)

test('wet is not compared with dry', async () => {
  const { reading, skeinId, first, second } = await beforeAndAfter()
  await reading(skeinId, first, [45, 25, -7])
  const wet = await reading(skeinId, second, [40, 25, -7], { ...washed, wet: true })
  expect(wet.doubts[0].detail).toBe('Not compared. One was read wet and the other dry.')
})

test('daylight D65 and 10° are what is meant where nothing is said', async () => {
  const { reading, skeinId, first, second } = await beforeAndAfter({
    after: { illuminant: 'd65', observer: '10°' },
  })
  await reading(skeinId, first, [45, 25, -7])
  expect((await reading(skeinId, second, [47, 22, -6], washed)).doubts).toEqual([])
})

test('two photos compare by the standard in both frames, and not without', async () => {
  const { client, skein, reading, results, skeinId, first, second } = await beforeAndAfter({
    before: { method: 'photo' },
    after: { method: 'photo' },
  })
  const standard = await skein({ code: 'card', role: 'standard' })
  await reading(skeinId, first, [45, 25, -7])
  const worn = await reading(skeinId, second, [47, 22, -6], washed)
  expect(worn.doubts[0].detail).toContain('without the same standard in the frame')
  for (const id of [first, second])
    await changed(client, `/api/sittings/${id}`, 1, { inFrameStandardId: standard.id })
  expect((await results('dE00'))[0]?.value).toBeCloseTo(2.504, 3)
})

test('the exposed half is held against the covered half of the same sitting', async () => {
  const { client, session, vessel, skein, place, reading, results, skeinId, second } = await beforeAndAfter()
  const { id: sessionId } = await session({ kind: 'light' })
  const card = await vessel(sessionId, { stage: 'light', kind: 'card' })
  const open = await skein({ code: 'open', cutFromId: skeinId })
  const foil = await skein({ code: 'foil', cutFromId: skeinId })
  await place(card.id, open.id)
  await place(card.id, foil.id, { covered: true })
  const dark = await reading(foil.id, second, [45, 25, -7])
  const light = await reading(open.id, second, [47, 22, -6], { wear: { 'X1 days': 28 } })
  expect((await client.get(`/api/readings/${light.id}`)).body.changes).toMatchObject([
    { basis: 'covered', againstIds: [dark.id] },
  ])
  expect(await results('dE00')).toMatchObject([{ basis: 'covered', skeinId: open.id, wearKey: 'X1 days=28' }])
})

test('a twin of the same sitting stands beside what was treated', async () => {
  const { client, skein, reading, skeinId, first, second } = await beforeAndAfter()
  const twin = await skein({ code: 'twin', role: 'dark twin', cutFromId: skeinId })
  await reading(skeinId, first, [45, 25, -7])
  const kept = await reading(twin.id, second, [45, 25, -7.5])
  const worn = await reading(skeinId, second, [47, 22, -6], washed)
  const { body } = await client.get(`/api/readings/${worn.id}`)
  expect(body.changes.map((it: Record<string, unknown>) => [it.basis, it.againstIds])).toEqual([
    ['own', expect.anything()],
    ['twin', [kept.id]],
  ])
})

test('a batch is held against the mean of the standards, whichever came first', async () => {
  const { skein, reading, results, skeinId, first } = await beforeAndAfter()
  await reading(skeinId, first, [47, 22, -6])
  expect(await results('dE00')).toEqual([])
  for (const [code, lab] of [
    ['kept 1', [44, 24, -8]],
    ['kept 2', [46, 26, -6]],
  ] as const) {
    const standard = await skein({ code, role: 'standard' })
    await reading(standard.id, first, lab)
  }
  const [row] = await results('dE00')
  expect(row).toMatchObject({ basis: 'standard', skeinId, wearKey: '' })
  expect(row?.value).toBeCloseTo(2.504, 3)
})

test('a skein that is a standard no more leaves the comparisons', async () => {
  const { client, skein, reading, results, skeinId, first } = await beforeAndAfter()
  const standard = await skein({ code: 'kept', role: 'standard' })
  await reading(standard.id, first, [45, 25, -7])
  await reading(skeinId, first, [47, 22, -6])
  expect(await results('dE00')).toHaveLength(1)
  await changed(client, `/api/skeins/${standard.id}`, 1, { role: 'treated' })
  expect(await results('dE00')).toEqual([])
})

test('a companion is graded for staining against its unstained self', async () => {
  const { client, skein, reading, results, first, second } = await beforeAndAfter()
  const wool = await skein({ code: 'white wool', role: 'companion', fibre: 'wool' })
  await reading(wool.id, first, [93, 0, 3])
  const stained = await reading(wool.id, second, [85, -4, -3], washed)
  expect((await client.get(`/api/readings/${stained.id}`)).body.changes).toMatchObject([
    { basis: 'companion', grade: '3' },
  ])
  // The pair (93,0,3)→(85,−4,−3) of the trade's worked checks: ΔE*ab 10.77, staining 3.11, a 3
  expect(await results('staining')).toMatchObject([{ fibre: 'wool', value: 3, text: '3', wearKey: 'W2=3' }])
  expect((await results('staining dE76'))[0]?.value).toBeCloseTo(10.77, 2)
  expect(await results('dE00')).toEqual([])
})
