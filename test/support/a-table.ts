/** A table of a sample story, to be changed in single cells as a dyer’s own would differ. */
export type Cells = { readonly headings: string[]; readonly rows: string[][] }

export function cellsOf(text: string): Cells {
  const [head = '', ...lines] = text.trim().split(/\r?\n/)
  return { headings: head.split(','), rows: lines.map((line) => line.split(',')) }
}

export function textOf({ headings, rows }: Cells): string {
  return [headings, ...rows].map((row) => row.join(',')).join('\n')
}

/** The rows that answer, changed; a row that becomes undefined is left out. */
export function changed(
  table: Cells,
  change: (row: Record<string, string>) => Record<string, string> | undefined,
): Cells {
  const rows = table.rows.flatMap((cells) => {
    const row = change(Object.fromEntries(table.headings.map((heading, i) => [heading, cells[i] ?? ''])))
    return row ? [row] : []
  })
  const headings = [...new Set([...table.headings, ...rows.flatMap((row) => Object.keys(row))])]
  return { headings, rows: rows.map((row) => headings.map((heading) => row[heading] ?? '')) }
}
