import { expect, test } from 'vitest'
import { NewTable } from '#api/contract/table.ts'
import { headingParts } from '#api/table/guess-columns.ts'
import { readTableCells, readTableText } from '#api/table/read-table.ts'

const spaces = ' '.repeat(301)
const said = async (text: string) =>
  readTableText(text).then(
    () => 'read',
    (refused: { faults: { detail: string }[] }) => refused.faults[0]?.detail,
  )

test.each([
  ['a heading', `L${spaces},a\n50,1`, 'A heading takes at most 300 characters.'],
  ['a quoted heading', `"L${spaces}",a\n50,1`, 'A heading takes at most 300 characters.'],
  ['a cell', `L,a\n50,1\n51,${'x'.repeat(2001)}`, 'Line 3: a cell takes at most 2000 characters.'],
  [
    'a quoted cell',
    `L,a\n50,1\n51,"${'\n'.repeat(2001)}"`,
    /^Line \d+: a cell takes at most 2000 characters\.$/,
  ],
  ['headings', Array.from({ length: 101 }, (_, i) => `h${i}`).join(), 'One table may hold 100 columns.'],
  ['a row', `L,a\n50${',1'.repeat(100)}`, 'Line 2 has more than 100 cells.'],
  ['rows', `L\n${'5\n'.repeat(100_001)}`, 'One table may hold 100,000 rows. Send the rest in a second one.'],
  [
    'cells',
    `${Array.from({ length: 100 }, (_, i) => `h${i}`).join()}\n${`5${',5'.repeat(99)}\n`.repeat(15_000)}`,
    'One table may hold 1,500,000 cells. Send the rest in a second one.',
  ],
])('a table with more than it may hold is refused in one sentence: %s', async (_, text, sentence) => {
  expect(await said(text)).toMatch(sentence)
})

test('what is just within is read, quoted or not, with any line break', async () => {
  const long = 'x'.repeat(2000)
  for (const lineBreak of ['\n', '\r\n', '\r']) {
    const text = ['L,note', '', `50,"${'""'.repeat(500)},${'y'.repeat(900)}"`, `51,${long}`, ''].join(
      lineBreak,
    )
    const { headings, rows } = await readTableText(text)
    expect(headings).toEqual(['L', 'note'])
    expect(rows).toEqual([
      { line: 3, cells: ['50', `${'"'.repeat(500)},${'y'.repeat(900)}`] },
      { line: 4, cells: ['51', long] },
    ])
  }
  const wide = Array.from({ length: 100 }, (_, i) => `h${i}`).join()
  expect((await readTableText(`${wide}\n${wide}`)).headings).toHaveLength(100)
})

test('letters of several bytes stay whole wherever the text is cut for reading', async () => {
  const rows = Array.from({ length: 9000 }, (_, i) => `${'🧶'.repeat(i % 5)}é${i}`)
  const read = await readTableText(['yarn', ...rows].join('\n'))
  expect(read.rows.map(({ cells }) => cells[0])).toEqual(rows)
})

test('cells of JSON have the same limits, and the first wrong one is named', () => {
  expect(() => readTableCells([[`L${spaces}`], ['5']])).toThrow('This table cannot be read.')
  expect(() => readTableCells([['L'], Array(101).fill(5)])).toThrow('This table cannot be read.')
  const wrong = NewTable.safeParse({ cells: [['L'], [5], [null, true]] })
  expect(wrong.error?.issues).toMatchObject([{ path: ['cells', 2, 1] }])
})

test.each([
  ['steam time [min]', { name: 'steam time', unit: 'min' }],
  ['mass (g) ', { name: 'mass', unit: 'g' }],
  ['dye (red) [g]', { name: 'dye (red)', unit: 'g' }],
  ['a (b (c)', { name: 'a', unit: 'b (c' }],
  ['(g)', { name: '(g)' }],
  ['a ()', { name: 'a ()' }],
  ['plain', { name: 'plain' }],
])('the heading “%s” has its name and its unit', (heading, parts) => {
  expect(headingParts(heading)).toEqual(parts)
})
