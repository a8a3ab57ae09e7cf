import { expect, test } from 'vitest'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

test('the example studio opens with its ladder settled, marked invented, and opening it twice changes nothing', async () => {
  const client = clientOf(await emptyDatabase())
  const first = await client.post('/api/example-studio')
  expect(first.status).toBe(200)
  const [ladder] = first.body.trialIds
  const finding = await client.get(`/api/trials/${ladder}/findings`)
  expect(finding.body).toMatchObject({
    invented: true,
    lockedBefore: true,
    verdict: { headline: '35 minutes of steam is enough.' },
  })
  expect(finding.body.evidenceStep.step).toBe('E2')
  const again = await client.post('/api/example-studio')
  expect(again.body).toEqual(first.body)
  const sheet = await client.get(`/sheets/trials/${ladder}`)
  expect(sheet.body).toContain('Invented data.')
})

// What a careful reader of the invented stories must find (the notes beside them): superwash 30 mL, wool/nylon 30 mL,
// silk not reached by 120 mL; oat, lichen and brick by their worst lots, deep turquoise not.
test('the acid ladder of the example studio answers for each base, and says when it was not reached', async () => {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  const id = body.trialIds[1]
  const first = await client.get(`/api/trials/${id}/findings`)
  const said: Record<string, string> = {}
  for (const base of first.body.within.levels) {
    const finding = await client.get(`/api/trials/${id}/findings?within=${base.id}`)
    said[base.label] = finding.body.verdict.headline
  }
  expect(said['superwash wool']).toMatch(/^On superwash wool, 30 mL/)
  expect(said['wool/nylon 80/20']).toMatch(/^On wool\/nylon 80\/20, 30 mL/)
  expect(said.silk).toMatch(/^On silk, not reached/)
})

test('the colourways of the example studio are judged lot by lot', async () => {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  const finding = await client.get(`/api/trials/${body.trialIds[2]}/findings`)
  expect(finding.body.verdict.headline).toBe(
    'Oat, lichen and brick pass: 3 of 3 lots each; plum fails: staining 3-4 (lot A); slate fails: staining 3-4 (lot A); deep turquoise fails: staining 2-3 (lot A) (dates not recorded).',
  )
})
