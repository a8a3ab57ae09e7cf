import type { InstrumentFault, InstrumentTable } from './instrument-table.ts'

/**
 * Whether a text is a CGATS file: it has a list of its fields and the data below it.
 *
 * @example
 * isCgats('CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L\nEND_DATA_FORMAT\nBEGIN_DATA\nEND_DATA') // true
 */
export function isCgats(text: string): boolean {
  return /^[ \t]*BEGIN_DATA_FORMAT\b/im.test(text)
}

/**
 * The table in a CGATS.17 text file: fields from BEGIN_DATA_FORMAT, one set a line from BEGIN_DATA, `#` begins a
 * comment, quotes hold a text with blanks together. Only the first table of a file is read.
 *
 * Source: CGATS.17-2009 (ISO 28178) in outline.
 *
 * @example
 * cgatsTable('CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L\nEND_DATA_FORMAT\nBEGIN_DATA\n"a 1" 50\nEND_DATA').rows // [{ line: 6, cells: ['a 1', '50'] }]
 */
export function cgatsTable(text: string): InstrumentTable {
  const columns: string[] = []
  const rows: { line: number; cells: string[] }[] = []
  // Without a prototype, so that a keyword named like a property of objects is only a keyword.
  const keywords: Record<string, string> = Object.create(null)
  const faults: InstrumentFault[] = []
  let part: 'head' | 'format' | 'data' | 'end' = 'head'
  let lastLine = 0
  const lines = text.split(/\r\n|\n|\r/)
  for (const [at, raw] of lines.entries()) {
    const line = at + 1
    const tokens = tokensOf(raw)
    const first = tokens[0]
    if (first === undefined) continue
    lastLine = line
    const word = first.toUpperCase()
    if (word === 'BEGIN_DATA_FORMAT') part = 'format'
    else if (word === 'END_DATA_FORMAT') part = 'head'
    else if (word === 'BEGIN_DATA') part = 'data'
    else if (word === 'END_DATA') {
      part = 'end'
      break
    } else if (part === 'format') columns.push(...tokens)
    else if (part === 'data') rows.push({ line, cells: tokens })
    else keep(keywords, word, tokens.slice(1))
  }
  if (part === 'data')
    faults.push({ line: lastLine, reason: 'The data do not end with END_DATA; the file may be cut off.' })
  if (part !== 'data' && part !== 'end')
    faults.push({ line: lastLine, reason: 'There is no BEGIN_DATA after the fields.' })
  const announced = Number(keywords.NUMBER_OF_SETS ?? rows.length)
  if (part === 'end' && Number.isFinite(announced) && announced !== rows.length)
    faults.push({ line: lastLine, reason: `The file announces ${announced} sets and holds ${rows.length}.` })
  return { columns, rows, keywords, faults }
}

function tokensOf(line: string): string[] {
  const tokens: string[] = []
  for (const [, quoted, plain] of line.matchAll(/"([^"]*(?:""[^"]*)*)"|([^\s"]+)/g)) {
    // A hash at the start of a word begins a comment; inside quotes or a word it is part of a name.
    if (plain?.startsWith('#')) break
    tokens.push(quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'))
  }
  return tokens
}

/** `KEYWORD "NAME"` only announces a word that is used further down; `WEIGHTING_FUNCTION` may come several times. */
function keep(keywords: Record<string, string>, word: string, values: readonly string[]): void {
  if (word === 'KEYWORD') return
  const value = values.join(' ')
  keywords[word] = keywords[word] === undefined ? value : `${keywords[word]}; ${value}`
}
