import type { InstrumentFault, InstrumentTable } from './instrument-table.ts'

/**
 * The table in a text with a head line and cells parted by tab, semicolon or comma, whichever the head line holds
 * most of. Quotes hold a cell with separators or line breaks together (RFC 4180). Empty lines are passed over.
 *
 * @example
 * delimitedTable('SAMPLE_ID;L*\n"a; 1";50,5').rows // [{ line: 2, cells: ['a; 1', '50,5'] }]
 */
export function delimitedTable(text: string): InstrumentTable {
  const body = text.replace(/^\uFEFF/, '')
  const separator = separatorOf(body)
  const rows: { line: number; cells: string[] }[] = []
  const faults: InstrumentFault[] = []
  let cells: string[] = []
  let cell = ''
  let quoted = false
  let line = 1
  let startLine = 1
  const endRow = () => {
    cells.push(cell.trim())
    if (cells.some((value) => value !== '')) rows.push({ line: startLine, cells })
    cells = []
    cell = ''
  }
  for (let at = 0; at < body.length; at++) {
    const char = body[at] as string
    const isBreak = char === '\n' || (char === '\r' && body[at + 1] !== '\n')
    if (isBreak) line++
    if (quoted) {
      if (char !== '"') cell += char
      else if (body[at + 1] === '"') cell += body[at++]
      else quoted = false
    } else if (char === '"' && cell.trim() === '') {
      quoted = true
      cell = ''
    } else if (char === separator) {
      cells.push(cell.trim())
      cell = ''
    } else if (isBreak) {
      endRow()
      startLine = line
    } else if (char !== '\r') cell += char
  }
  if (quoted) faults.push({ line: startLine, reason: 'A quotation mark is opened here and never closed.' })
  endRow()
  const [head, ...data] = rows
  return { columns: head?.cells ?? [], rows: data, keywords: {}, faults }
}

function separatorOf(text: string): string {
  const head = text.split(/[\r\n]+/).find((line) => line.trim() !== '') ?? ''
  const count = (separator: string) => head.split(separator).length
  if (count('\t') > 1) return '\t'
  return count(';') >= count(',') && count(';') > 1 ? ';' : ','
}
