import { parse } from 'csv-parse/sync'
import { Problem } from '#api/contract/problem.ts'

/** One row as it came: its cells as text, and the line of the pasted text that it begins on. */
export type TableRow = { readonly line: number; readonly cells: readonly string[] }
export type RawTable = { readonly headings: readonly string[]; readonly rows: readonly TableRow[] }

/** As many rows as one table may hold. */
export const mostRows = 100_000

/** A table pasted from a spreadsheet (tabs) or a CSV file (commas, or semicolons where the comma is the decimal sign). */
export function readTableText(text: string): RawTable {
  if (text.trim() === '')
    throw refused('#/text', 'There is nothing in it yet. Paste the rows with their headings.')
  const delimiter = delimiterOf(text)
  let records: { record: string[]; info: { lines: number } }[]
  try {
    records = parse(text, {
      delimiter,
      bom: true,
      info: true,
      relax_column_count: true,
      relax_quotes: delimiter === '\t',
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      trim: true,
      to: mostRows + 2,
    }) as unknown as { record: string[]; info: { lines: number } }[]
  } catch (error) {
    throw refused('#/text', whyUnreadable(error))
  }
  const [head, ...rest] = records
  if (!head) throw refused('#/text', 'There is nothing in it yet. Paste the rows with their headings.')
  return checked(
    '#/text',
    head.record,
    rest.map(({ record, info }) => ({ line: info.lines, cells: record.map(plainCell) })),
  )
}

/** The same from cells; the first row holds the headings. */
export function readTableCells(cells: readonly (readonly (string | number | null)[])[]): RawTable {
  const [head, ...rest] = cells
  if (!head) throw refused('#/cells', 'There is nothing in it yet. The first row holds the headings.')
  const rows = rest
    .map((row, i) => ({ line: i + 2, cells: row.map(asText) }))
    .filter((row) => row.cells.some((cell) => cell !== ''))
  return checked('#/cells', head.map(asText), rows)
}

function checked(pointer: string, headings: readonly string[], rows: readonly TableRow[]): RawTable {
  const named = headings.map((heading) => heading.trim())
  if (rows.length === 0) throw refused(pointer, 'There are headings but no rows under them.')
  if (rows.length > mostRows)
    throw refused(pointer, `One table may hold 100,000 rows. Send the rest in a second one.`)
  if (named.length > 200) throw refused(pointer, 'One table may hold 200 columns.')
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
  const firstLine =
    text
      .replace(/^\ufeff/, '')
      .trimStart()
      .split(/\r?\n/, 1)[0]
      ?.replace(/"[^"]*"/g, '') ?? ''
  if (firstLine.includes('\t')) return '\t'
  const count = (sign: string) => firstLine.split(sign).length
  return count(';') > count(',') ? ';' : ','
}
