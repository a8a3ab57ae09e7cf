/** A table as it was pasted: the headings, and the rows as text, each as long as the headings or longer. */
export type Pasted = {
  readonly headings: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/**
 * Reads what was pasted from a spreadsheet (tabs) or a CSV file (commas, or semicolons beside decimal commas). Rows
 * without anything in them are left out, as the API leaves them out; it reads and checks the same text again.
 *
 * @example
 * tableIn('place;L\n1;49,6\n').rows // [['1', '49,6']]
 */
export function tableIn(text: string): Pasted {
  const plain = text.replace(/^\ufeff/, '').replace(/^\s*\n/, '')
  const [headings = [], ...rows] = recordsIn(plain, delimiterOf(plain))
    .map((cells) => cells.map((cell) => cell.trim()))
    .filter((cells) => cells.some((cell) => cell !== ''))
  return {
    headings,
    rows: rows.map((cells) => [...cells, ...headings.slice(cells.length).map(() => '')]),
  }
}

/**
 * The table as text again, parted by tabs, to be sent.
 *
 * @example
 * textOf({ headings: ['place', 'note'], rows: [['1', 'a "dull" one']] }) // 'place\tnote\n1\ta "dull" one'
 */
export function textOf({ headings, rows }: Pasted): string {
  const line = (cells: readonly string[]) => cells.map(quoted).join('\t')
  return [line(headings), ...rows.map(line)].join('\n')
}

const quoted = (cell: string) => (/[\t\r\n]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)

function delimiterOf(text: string): string {
  const line = (text.split('\n', 1)[0] ?? '').replace(/"[^"]*"/g, '')
  if (line.includes('\t')) return '\t'
  return line.split(';').length > line.split(',').length ? ';' : ','
}

/** Cells by RFC 4180: within quotation marks anything may stand, a quotation mark twice. */
function recordsIn(text: string, delimiter: string): string[][] {
  const records: string[][] = []
  let record: string[] = []
  let from = 0
  while (from <= text.length) {
    const { cell, end } = cellAt(text, from, delimiter)
    record.push(cell)
    if (text[end] !== delimiter) {
      records.push(record)
      record = []
    }
    from = end + (text.startsWith('\r\n', end) ? 2 : 1)
  }
  return records
}

function cellAt(text: string, from: number, delimiter: string): { cell: string; end: number } {
  const closed = text[from] === '"' ? quotedEnd(text, from + 1) : undefined
  const end = endOfCell(text, closed === undefined ? from : closed + 1, delimiter)
  if (closed === undefined) return { cell: text.slice(from, end), end }
  return { cell: text.slice(from + 1, closed).replaceAll('""', '"') + text.slice(closed + 1, end), end }
}

function endOfCell(text: string, from: number, delimiter: string): number {
  let end = from
  while (end < text.length && text[end] !== delimiter && text[end] !== '\n' && text[end] !== '\r') end++
  return end
}

/** Where the mark stands that closes a cell in quotation marks, if one does. */
function quotedEnd(text: string, from: number): number | undefined {
  let at = text.indexOf('"', from)
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2)
  return at < 0 ? undefined : at
}
