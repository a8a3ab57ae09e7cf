import { type InfoRecord, type Options, parse } from 'csv-parse'
import { Problem } from '#api/contract/problem.ts'
import { breather } from './breathe.ts'
import {
  cellTooLong,
  headingTooLong,
  longestCell,
  longestHeading,
  mostCells,
  mostColumns,
  mostRows,
  rowTooLong,
  tooManyCells,
  tooManyColumns,
  tooManyRows,
} from './limits.ts'
import { whyTooLarge } from './size-of-text.ts'

/** One row as it came: its cells as text, and the line of the pasted text that it begins on. */
export type TableRow = { readonly line: number; readonly cells: readonly string[] }
export type RawTable = { readonly headings: readonly string[]; readonly rows: readonly TableRow[] }

/** A table pasted from a spreadsheet (tabs) or a CSV file (commas, or semicolons where the comma is the decimal sign). */
export async function readTableText(text: string): Promise<RawTable> {
  const delimiter = delimiterOf(text)
  const tooLarge = whyTooLarge(text, delimiter)
  if (tooLarge !== undefined) throw refused('#/text', tooLarge)
  const [head, ...rest] = await recordsIn(text, {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    bom: true,
    relax_column_count: true,
    relax_quotes: delimiter === '\t',
    skip_empty_lines: true,
    skip_records_with_empty_values: true,
    trim: true,
  })
  if (!head) throw refused('#/text', 'There is nothing in it yet. Paste the rows with their headings.')
  return checked('#/text', head.cells, rest)
}

/** So many bytes are taken apart at once; others are answered in between. */
const slice = 16 * 1024

async function recordsIn(text: string, options: Options): Promise<TableRow[]> {
  const records: TableRow[] = []
  const parser = parse({ ...options, info: true })
  parser.on('data', ({ record, info }: { record: string[]; info: InfoRecord }) =>
    records.push({ line: info.lines, cells: record.map(plainCell) }),
  )
  const ended = new Promise<void>((resolve, reject) => {
    parser.once('end', resolve)
    parser.once('error', (error) => reject(refused('#/text', whyUnreadable(error))))
  })
  // What is wrong is told at the end, however early it is found.
  ended.catch(() => {})
  const breathe = breather()
  const bytes = Buffer.from(text)
  for (let at = 0; at < bytes.length && parser.writable; at += slice) {
    parser.write(bytes.subarray(at, at + slice))
    await breathe()
  }
  parser.end()
  await ended
  return records
}

/** The same from cells; the first row holds the headings. */
export function readTableCells(cells: readonly (readonly (string | number | null)[])[]): RawTable {
  const [head, ...rest] = cells
  if (!head) throw refused('#/cells', 'There is nothing in it yet. The first row holds the headings.')
  const tooLarge = whyCellsTooLarge(cells)
  if (tooLarge !== undefined) throw refused('#/cells', tooLarge)
  const rows = rest
    .map((row, i) => ({ line: i + 2, cells: row.map(asText) }))
    .filter((row) => row.cells.some((cell) => cell !== ''))
  return checked('#/cells', head.map(asText), rows)
}

function whyCellsTooLarge(cells: readonly (readonly unknown[])[]): string | undefined {
  if (cells.length > mostRows + 1) return tooManyRows
  if ((cells[0]?.length ?? 0) > mostColumns) return tooManyColumns
  let count = 0
  for (const [i, row] of cells.entries()) {
    if (row.length > mostColumns) return rowTooLong(i + 1)
    count += row.length
    if (count > mostCells) return tooManyCells
    const longest = i === 0 ? longestHeading : longestCell
    if (row.some((cell) => typeof cell === 'string' && cell.length > longest))
      return i === 0 ? headingTooLong : cellTooLong(i + 1)
  }
  return undefined
}

function checked(pointer: string, headings: readonly string[], rows: readonly TableRow[]): RawTable {
  const named = headings.map((heading) => heading.trim())
  if (rows.length === 0) throw refused(pointer, 'There are headings but no rows under them.')
  if (rows.length > mostRows) throw refused(pointer, tooManyRows)
  if (named.length > mostColumns) throw refused(pointer, tooManyColumns)
  const twice = named.find((heading, i) => heading !== '' && named.indexOf(heading) !== i)
  if (twice !== undefined)
    throw refused(pointer, `The heading “${twice}” is there twice. Give each column its own.`)
  return { headings: named, rows }
}

const asText = (cell: string | number | null) => (cell === null ? '' : plainCell(String(cell).trim()))

/** Without the apostrophe by which our own tables make a cell harmless that a spreadsheet would take for a formula. */
const plainCell = (cell: string) => (/^'[=+\-@]/.test(cell) ? cell.slice(1) : cell)

function whyUnreadable(error: unknown): string {
  const { code, lines } = error as { code?: string; lines?: number }
  if (code === 'CSV_QUOTE_NOT_CLOSED') return 'A quotation mark is opened and never closed.'
  if (code === 'CSV_INVALID_CLOSING_QUOTE' || code === 'INVALID_OPENING_QUOTE')
    return `Line ${lines}: a quotation mark stands inside a cell. Write it twice, and the cell in quotation marks.`
  return `This cannot be read as a table: ${(error as Error).message}`
}

function refused(pointer: string, detail: string): Problem {
  return new Problem('at-fault', 'This table cannot be read.', [{ pointer, detail }])
}

/** The sign that parts the headings most often; a tab wins, for it never stands inside a heading. */
function delimiterOf(text: string): string {
  const from = /\S/.exec(text)?.index ?? 0
  let [isQuoted, commas, semicolons] = [false, 0, 0]
  for (const sign of text.slice(from, from + mostHeadingLine)) {
    if (sign === '"') isQuoted = !isQuoted
    else if (isQuoted) continue
    else if (sign === '\t') return '\t'
    else if (sign === '\n' || sign === '\r') break
    else if (sign === ',') commas++
    else if (sign === ';') semicolons++
  }
  return semicolons > commas ? ';' : ','
}

/** No line of headings that is taken is longer. */
const mostHeadingLine = 2 * mostColumns * longestHeading
