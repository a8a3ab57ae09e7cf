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
  const separator = separatorOf(body).charCodeAt(0)
  const rows: { line: number; cells: string[] }[] = []
  const faults: InstrumentFault[] = []
  let cells: string[] = []
  // A cell is what was put together of it so far, and what follows from a place on.
  let [cell, from, isBlank, isQuoted] = ['', 0, true, false]
  let [line, startLine] = [1, 1]
  for (let at = 0; at <= body.length; at++) {
    const sign = at < body.length ? body.charCodeAt(at) : lineFeed
    const isBreak = sign === lineFeed || (sign === carriageReturn && body.charCodeAt(at + 1) !== lineFeed)
    if (isBreak && at < body.length) line++
    if (isQuoted && at < body.length) {
      if (sign !== quote) continue
      const isTwice = body.charCodeAt(at + 1) === quote
      cell += body.slice(from, isTwice ? ++at : at)
      isQuoted = isTwice
      isBlank = cell.length < 100 && cell.trim() === ''
      from = at + 1
    } else if (sign === quote && isBlank) {
      ;[cell, from, isQuoted] = ['', at + 1, true]
    } else if (sign === separator || isBreak) {
      cells.push((cell + body.slice(from, at)).trim())
      ;[cell, from, isBlank] = ['', at + 1, true]
      if (!isBreak) continue
      if (cells.some((value) => value !== '')) rows.push({ line: startLine, cells })
      if (isQuoted)
        faults.push({ line: startLine, reason: 'A quotation mark is opened here and never closed.' })
      cells = []
      startLine = line
    } else if (isBlank) isBlank = body.charAt(at).trim() === ''
  }
  const [head, ...data] = rows
  return { columns: head?.cells ?? [], rows: data, keywords: {}, faults }
}

const [quote, lineFeed, carriageReturn] = [34, 10, 13]

function separatorOf(text: string): string {
  const first = Math.max(0, text.search(/\S/))
  const start = Math.max(text.lastIndexOf('\n', first), text.lastIndexOf('\r', first)) + 1
  const head = /[^\r\n]*/.exec(text.slice(start))?.[0] ?? ''
  const count = (separator: string) => {
    let found = 0
    for (let at = head.indexOf(separator); at >= 0; at = head.indexOf(separator, at + 1)) found++
    return found
  }
  if (count('\t') > 0) return '\t'
  return count(';') >= count(',') && count(';') > 0 ? ';' : ','
}
