import { Component } from 'preact'
import type { Lab } from '#api/science/colour/lab.ts'
import { markAt, type RowMark } from '#web/pages/trial/readings/marks.ts'
import { Swatch } from '#web/parts/swatch.tsx'

export type GridRowProps = {
  readonly row: number
  readonly cells: readonly string[]
  readonly mark: RowMark
  readonly colours: readonly Lab[] | undefined
  /** What the columns are called, for those who hear the cell alone. */
  readonly names: readonly string[]
  /** The column that the tabulator comes to, if it is in this row. */
  readonly tabbed: number
}

/** One row of fields. It is drawn anew only when something of its own has changed: there may be two hundred. */
export class GridRow extends Component<GridRowProps> {
  override shouldComponentUpdate(next: GridRowProps): boolean {
    const { cells, mark, names, tabbed, row } = this.props
    return (
      cells !== next.cells ||
      mark !== next.mark ||
      names !== next.names ||
      tabbed !== next.tabbed ||
      row !== next.row
    )
  }

  override render({ row, cells, mark, colours, names, tabbed }: GridRowProps) {
    const state = markAt(mark)
    return (
      <tr class={state === undefined ? undefined : `paste-row-${state}`}>
        <th scope="row">
          {row + 1}
          {state === undefined ? null : (
            <span class="visually-hidden">{state === 'fault' ? ', at fault' : ', to be confirmed'}</span>
          )}
        </th>
        {colours === undefined ? null : (
          <td class="paste-pair">
            <Swatch size="small" colours={markAt(mark) === 'fault' ? [] : colours} />
          </td>
        )}
        {names.map((name, column) => {
          const said = markAt(mark, column)
          return (
            <td key={column} class={said === undefined ? undefined : `paste-cell-${said}`}>
              <input
                type="text"
                size={1}
                autoComplete="off"
                placeholder="blank"
                aria-label={`Row ${row + 1}, ${name}`}
                aria-invalid={said === 'fault' ? true : undefined}
                aria-describedby={said === undefined ? undefined : noteId(row, column)}
                data-row={row}
                data-column={column}
                tabIndex={column === tabbed ? 0 : -1}
                value={shown(cells[column] ?? '')}
              />
            </td>
          )
        })}
      </tr>
    )
  }
}

/** The id of the note in the margin that speaks of a cell. */
export const noteId = (row: number, column: number) => `said-${row}-${column}`

/** A true minus on the screen; what is sent is what was typed. */
const shown = (cell: string) => cell.replace(/^-(?=[\d.,])/, '−')
