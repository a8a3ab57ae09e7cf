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

const [quote, lineFeed, carriageReturn, blank, tab] = [34, 10, 13, 32, 9]

/**
 * What of a table’s text is more than a table may hold, found in one pass before anything is taken apart; undefined
 * where nothing is. Line breaks and delimiters inside quotation marks belong to their cell.
 *
 * @example
 * [whyTooLarge('L,a\n50,1', ','), whyTooLarge(`L${' '.repeat(300)},a`, ',')] // [undefined, 'A heading takes at most 300 characters.']
 */
export function whyTooLarge(text: string, delimiter: string): string | undefined {
  const between = delimiter.charCodeAt(0)
  let [line, rows, cells, allCells, length] = [1, 0, 0, 0, 0]
  let [isBlankCell, isBlankRow, isQuoted] = [true, true, false]
  for (let at = 0; at <= text.length; at++) {
    const sign = at < text.length ? text.charCodeAt(at) : lineFeed
    const isBreak = sign === lineFeed || sign === carriageReturn
    const isHead = rows === 0
    if (isBreak && (!isQuoted || at === text.length)) {
      // A line without anything in it is no row, and is passed over quickly.
      if (cells > 0 || !isBlankRow) allCells += cells + 1
      if (!isBlankRow && ++rows > mostRows + 1) return tooManyRows
      if (allCells > mostCells) return tooManyCells
      cells = length = 0
      isBlankCell = isBlankRow = true
    } else if (sign === between && !isQuoted) {
      if (++cells >= mostColumns) return isHead ? tooManyColumns : rowTooLong(line)
      length = 0
      isBlankCell = true
    } else {
      if (++length > (isHead ? longestHeading : longestCell))
        return isHead ? headingTooLong : cellTooLong(line)
      if (isQuoted) isQuoted = sign !== quote
      // Twice inside quotation marks it is one sign of the cell, which goes on.
      else if (sign === quote) isQuoted = isBlankCell || text.charCodeAt(at - 1) === quote
      if (sign !== blank && sign !== tab) isBlankCell = isBlankRow = false
    }
    if (sign === lineFeed || (sign === carriageReturn && text.charCodeAt(at + 1) !== lineFeed)) line++
  }
  return undefined
}
