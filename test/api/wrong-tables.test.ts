import fc from 'fast-check'
import { expect, test } from 'vitest'
import { startLadder, storyText } from '#test/support/a-ladder.ts'
import { type Cells, cellsOf, textOf } from '#test/support/a-table.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import { rowCounts } from '#test/support/row-counts.ts'

const ladder = cellsOf(storyText('steam-time-ladder.csv'))
const measured = ['steam_min', 'L0', 'a0', 'b0', 'L1', 'a1', 'b1', 'rinses_to_4', 'stain_white_wool', 'felt']

const withCell = (row: number, heading: string, cell: string): Cells => ({
  headings: ladder.headings,
  rows: ladder.rows.map((cells, i) =>
    i === row ? cells.map((it, j) => (ladder.headings[j] === heading ? cell : it)) : cells,
  ),
})

/** Tables with something in them that cannot be kept: a cell, a row twice, half a colour, a heading twice, no rows. */
const wrongTables: fc.Arbitrary<string> = fc.oneof(
  fc
    .record({
      row: fc.nat(ladder.rows.length - 1),
      heading: fc.constantFrom(...measured),
      cell: fc.constantFrom('abc', '1e999', '-500', '4/5/6', '=1+1', '12.3.4', 'NaN', 'x\u0000', '999999999'),
    })
    .map(({ row, heading, cell }) => textOf(withCell(row, heading, cell))),
  fc
    .nat(ladder.rows.length - 1)
    .map((row) => textOf({ ...ladder, rows: [...ladder.rows, ladder.rows[row] ?? []] })),
  fc.nat(ladder.rows.length - 1).map((row) => textOf(withCell(row, 'a0', ''))),
  fc.nat(ladder.rows.length - 1).map((row) => textOf(withCell(row, 'steam_min', '36'))),
  fc
    .constantFrom(...ladder.headings)
    .map((heading) =>
      textOf({ ...ladder, headings: ladder.headings.map((it, i) => (i === 0 ? heading : it)) }),
    )
    .filter((text) => !text.startsWith('run')),
  fc.constantFrom(
    '',
    ' \n \n',
    'run',
    'run,steam_min,L0',
    '"unclosed,1\n2,3',
    '\u0000\u0001\u0002',
    '{}',
    ','.repeat(400),
  ),
)

test('fifty wrong tables are refused whole, with line and column, and nothing of them is stored', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  const before = await rowCounts(db)
  await fc.assert(
    fc.asyncProperty(wrongTables, fc.boolean(), async (text, asText) => {
      const answer = asText
        ? await client.ask('POST', `/api/trials/${id}/table?between=W2:3&ownVessel=true`, text, {
            'content-type': 'text/csv',
          })
        : await client.post(`/api/trials/${id}/table`, { text, between: { W2: 3 }, ownVessel: true })
      const said = `${JSON.stringify(text).slice(0, 300)} → ${answer.status} ${JSON.stringify(answer.body).slice(0, 600)}`
      expect(answer.status, said).toBe(422)
      expect(answer.headers.get('content-type'), said).toBe('application/problem+json')
      expect(answer.body.errors[0].pointer, said).toMatch(/^#\//)
      expect(answer.body.errors[0].detail, said).not.toBe('')
    }),
    { numRuns: 50, seed: 20260225 },
  )
  expect(await rowCounts(db)).toEqual(before)
}, 120_000)

test('a check alone stores nothing, whatever the table holds', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  const before = await rowCounts(db)
  await fc.assert(
    fc.asyncProperty(fc.oneof(wrongTables, fc.constant(textOf(ladder))), async (text) => {
      const answer = await client.post(`/api/trials/${id}/table?check=true`, { text })
      expect([200, 422]).toContain(answer.status)
    }),
    { numRuns: 30, seed: 20260226 },
  )
  expect(await rowCounts(db)).toEqual(before)
})

test('the good rows are kept alone only by an explicit choice, and the rest is listed', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  const text = textOf(withCell(8, 'L1', '460'))
  const refused = await client.post(`/api/trials/${id}/table`, { text, between: { W2: 3 } })
  expect(refused.body).toMatchObject({
    status: 422,
    errors: [{ pointer: '#/rows/8/6', detail: expect.stringContaining('Line 10, L1: 460') }],
  })
  const kept = await client.post(`/api/trials/${id}/table`, { text, between: { W2: 3 }, keep: 'ready' })
  expect(kept.body).toMatchObject({
    rows: 24,
    kept: 23,
    leftOut: [{ row: 9, read: '460', suggestion: '46.0' }],
  })
  expect((await rowCounts(db)).skein).toBe(23)
})
