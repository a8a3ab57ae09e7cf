import { grouped } from '#web/form/number-words.ts'
import { pagesOf, rowsAtOnce } from '#web/pages/trial/readings/row-order.ts'
import { Button } from '#web/parts/button.tsx'

export type RowPagesProps = {
  readonly order: readonly number[]
  readonly page: number
  readonly onPage: (page: number) => void
  /** Brings the rows to the front that something is said of now. */
  readonly onFirst: () => void
}

/** The pages of a long table, a hundred rows each. Nothing for a short one. */
export function RowPages({ order, page, onPage, onFirst }: RowPagesProps) {
  const pages = pagesOf(order.length)
  if (pages < 2) return null
  const from = page * rowsAtOnce
  return (
    <nav class="row paste-pages" aria-label="Pages of the table">
      <p role="status">
        {grouped(from + 1)} to {grouped(Math.min(order.length, from + rowsAtOnce))} of {grouped(order.length)}{' '}
        rows, those at fault first
      </p>
      <Button
        small
        onPress={() => onPage(Math.max(0, page - 1))}
        waitsFor={page === 0 ? 'a later page' : undefined}
      >
        Earlier rows
      </Button>
      <Button small onPress={() => onPage(page + 1)} waitsFor={page + 1 >= pages ? 'more rows' : undefined}>
        Later rows
      </Button>
      <Button small kind="plain" onPress={onFirst}>
        Those at fault now, first
      </Button>
    </nav>
  )
}
