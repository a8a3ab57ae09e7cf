import { storyText } from './a-ladder.ts'
import { cellsOf } from './a-table.ts'

/**
 * The steam ladder as somebody might copy it from a spreadsheet: three mistakes (an L* of 460, a place given twice, a
 * grade as 4/5), 18 rinses, one blank, and two decimal commas.
 */
export function mistypedLadder(): string {
  const table = cellsOf(storyText('steam-time-ladder.csv'))
  const cell = (row: number, heading: string, typed: string) => {
    const cells = table.rows[row - 1]
    if (cells) cells[table.headings.indexOf(heading)] = typed
  }
  cell(9, 'L1', '460')
  cell(17, 'rack_place', '4')
  cell(20, 'stain_white_wool', '4/5')
  cell(12, 'rinses_to_4', '18')
  cell(15, 'felt', '')
  cell(4, 'L0', '49,6')
  cell(4, 'L1', '57,0')
  return [table.headings, ...table.rows].map((cells) => cells.join('\t')).join('\n')
}
