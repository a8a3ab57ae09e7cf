import './grid.css'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Column, TableCheck } from '#api/contract/table.ts'
import type { Factor } from '#api/contract/trial.ts'
import { ColumnHead } from '#web/pages/trial/readings/column-head.tsx'
import { leadsTo } from '#web/pages/trial/readings/grid-keys.ts'
import { GridRow } from '#web/pages/trial/readings/grid-row.tsx'
import { marksOf } from '#web/pages/trial/readings/marks.ts'
import { meaningWords } from '#web/pages/trial/readings/meanings.ts'
import type { Cell, Paste } from '#web/pages/trial/readings/paste.ts'
import { colourColumns, coloursOf } from '#web/pages/trial/readings/row-colours.ts'
import type { Pasted } from '#web/pages/trial/readings/table-text.ts'

export type GridProps = {
  readonly table: Pasted
  readonly check: TableCheck
  readonly factors: readonly Factor[]
  /** The rows that are shown, from 0. */
  readonly rows: readonly number[]
  /** A cell that a note leads to. */
  readonly goTo: Cell | undefined
  readonly onMean: (column: Column) => void
  readonly onType: Paste['type']
  readonly onLeave: () => void
}

/** The pasted table as fields: arrow keys move from cell to cell, Escape leaves. */
export function Grid({ table, check, factors, rows, goTo, onMean, onType, onLeave }: GridProps) {
  const box = useRef<HTMLTableElement>(null)
  const [tabbed, setTabbed] = useState<Cell>({ row: rows[0] ?? 0, column: 0 })
  const marks = useMemo(() => marksOf(check), [check])
  const { columns } = check
  const axes = useMemo(() => colourColumns(columns), [columns])
  const nameKey = columns.map((column) => meaningWords(column, factors)).join('\u0001')
  const names = useMemo(
    () => columns.map((column) => `${column.heading}, ${meaningWords(column, factors)}`),
    [nameKey],
  )
  const widths = useMemo(
    () =>
      columns.map((_, column) =>
        Math.max(0, ...rows.slice(0, 100).map((row) => table.rows[row]?.[column]?.length ?? 0)),
      ),
    [check, rows],
  )
  const first = rows.includes(tabbed.row) ? tabbed : { row: rows[0] ?? 0, column: 0 }

  const focusOn = ({ row, column }: Cell): void => {
    const field = box.current?.querySelector<HTMLInputElement>(
      `input[data-row="${row}"][data-column="${column}"]`,
    )
    field?.focus()
    field?.select()
  }
  useEffect(() => {
    if (goTo !== undefined) focusOn(goTo)
  }, [goTo])

  const onKeyDown = (event: KeyboardEvent): void => {
    const field = event.target
    if (!(field instanceof HTMLInputElement) || event.altKey || event.ctrlKey || event.metaKey) return
    if (event.key === 'Escape') {
      event.preventDefault()
      onLeave()
      return
    }
    const next = leadsTo(event.key, field, { rows, columns: columns.length })
    if (next === undefined) return
    event.preventDefault()
    focusOn(next)
  }
  const cellOf = (target: EventTarget | null): (Cell & { field: HTMLInputElement }) | undefined =>
    target instanceof HTMLInputElement && target.dataset.row !== undefined
      ? { row: Number(target.dataset.row), column: Number(target.dataset.column), field: target }
      : undefined

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for a form; this only groups what scrolls together
    <div
      class={rows.length > 30 ? 'paste-grid paste-grid-long' : 'paste-grid'}
      role="group"
      aria-label="The pasted rows"
      aria-describedby="paste-keys"
    >
      <table
        ref={box}
        onKeyDown={onKeyDown}
        onInput={(event) => {
          const cell = cellOf(event.target)
          if (cell)
            onType([{ row: cell.row, column: cell.column, typed: cell.field.value.replace(/^−/, '-') }])
        }}
        onFocusIn={(event) => {
          const cell = cellOf(event.target)
          if (cell) setTabbed({ row: cell.row, column: cell.column })
        }}
      >
        <thead>
          <tr>
            <td class="paste-corner" />
            {axes.length === 0 ? null : (
              <th scope="col" class="paste-pair">
                {axes.length === 2 ? 'pair' : 'colour'}
              </th>
            )}
            {columns.map((column, place) => (
              <ColumnHead
                key={place}
                column={column}
                factors={factors}
                characters={widths[place] ?? 0}
                onMean={onMean}
              />
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <GridRow
              key={row}
              row={row}
              cells={table.rows[row] ?? []}
              mark={marks.get(row) ?? ''}
              colours={axes.length === 0 ? undefined : coloursOf(table.rows[row] ?? [], axes)}
              names={names}
              tabbed={row === first.row ? first.column : -1}
            />
          ))}
        </tbody>
      </table>
    </div>
  )
}
