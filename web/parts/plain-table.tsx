import { Sentence } from '#web/parts/delta-e.tsx'
import { TableBox } from '#web/parts/table-box.tsx'

export type PlainTableData = {
  readonly head: readonly { readonly words: string; readonly figure?: boolean }[]
  /** Each row has a cell for every head, the first naming the row. */
  readonly rows: readonly {
    readonly key: string
    readonly cells: readonly string[]
    readonly chosen?: boolean
  }[]
}

/** A table of words and figures, as under “as a table”: figures stand right, words left. */
export function PlainTable({ name, data }: { readonly name: string; readonly data: PlainTableData }) {
  const place = (column: number): string | undefined =>
    data.head[column]?.figure === true ? 'figure' : undefined
  return (
    <TableBox name={name}>
      <thead>
        <tr>
          {data.head.map(({ words }, column) => (
            <th key={words} scope="col" class={place(column)}>
              <Sentence text={words} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {data.rows.map(({ key, cells, chosen }) => (
          <tr key={key} class={chosen === true ? 'chosen' : undefined}>
            {cells.map((cell, column) =>
              column === 0 ? (
                <th key={data.head[column]?.words} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={data.head[column]?.words} class={place(column)}>
                  {cell}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </TableBox>
  )
}
