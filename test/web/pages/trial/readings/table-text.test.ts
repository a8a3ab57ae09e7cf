import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readTableText } from '#api/table/read-table.ts'
import { tableIn, textOf } from '#web/pages/trial/readings/table-text.ts'

describe('what is pasted', () => {
  test.each([
    ['tabs', 'place\tL\n1\t49.6\n2\t50.1'],
    ['commas', 'place,L\n1,49.6\n2,50.1'],
    ['semicolons', 'place;L\r\n1;49.6\r\n2;50.1\r\n'],
    ['empty lines and a byte order mark', '\ufeffplace,L\n\n1,49.6\n,\n2,50.1\n\n'],
    ['quotation marks', '"place","L"\n"1","49.6"\n"2","50.1"'],
  ])('with %s is read into headings and rows', (_name, text) => {
    expect(tableIn(text)).toEqual({
      headings: ['place', 'L'],
      rows: [
        ['1', '49.6'],
        ['2', '50.1'],
      ],
    })
  })

  test('a cell in quotation marks may hold the delimiter, a line break and a quotation mark', () => {
    expect(tableIn('code,note\nA,"dull, ""flat""\nand grey"').rows).toEqual([['A', 'dull, "flat"\nand grey']])
  })

  test('a short row is filled with blanks, a long one keeps its cells to be said', () => {
    expect(tableIn('a,b,c\n1\n1,2,3,4').rows).toEqual([
      ['1', '', ''],
      ['1', '2', '3', '4'],
    ])
  })
})

const cell = fc.string({ maxLength: 8 }).map((text) => text.replace(/\0/g, '').trim())
const plain = cell.filter((text) => !/^'[=+\-@]/.test(text))

test('what is sent, the API reads as the same cells', async () => {
  const tables = fc.integer({ min: 2, max: 4 }).chain((columns) =>
    fc.record({
      headings: fc.constant(Array.from({ length: columns }, (_, i) => `column ${i}`)),
      rows: fc.array(
        fc.array(plain, { minLength: columns, maxLength: columns }).map(([, ...rest]) => ['x', ...rest]),
        { minLength: 1, maxLength: 5 },
      ),
    }),
  )
  await fc.assert(
    fc.asyncProperty(tables, async (table) => {
      const read = await readTableText(textOf(table))
      expect(read.headings).toEqual(table.headings)
      expect(read.rows.map(({ cells }) => cells)).toEqual(table.rows)
    }),
    { seed: 7, numRuns: 300 },
  )
})
