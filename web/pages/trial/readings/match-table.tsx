import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { TableCheck, TableKept } from '#api/contract/table.ts'
import type { Factor } from '#api/contract/trial.ts'
import { counted, listed } from '#web/form/number-words.ts'
import { Asks, MoreAsks } from '#web/pages/trial/readings/asks.tsx'
import { FootBar } from '#web/pages/trial/readings/foot-bar.tsx'
import { Grid } from '#web/pages/trial/readings/grid.tsx'
import { useKeep } from '#web/pages/trial/readings/keep.ts'
import { marksOf } from '#web/pages/trial/readings/marks.ts'
import type { Cell, Paste } from '#web/pages/trial/readings/paste.ts'
import { RowNotes } from '#web/pages/trial/readings/row-notes.tsx'
import { pagesOf, rowOrder, rowsOfPage } from '#web/pages/trial/readings/row-order.ts'
import { RowPages } from '#web/pages/trial/readings/row-pages.tsx'
import type { Pasted } from '#web/pages/trial/readings/table-text.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

export type MatchTableProps = {
  readonly trialId: string
  readonly factors: readonly Factor[]
  readonly paste: Paste
  readonly table: Pasted
  readonly check: TableCheck
  readonly onKept: (kept: TableKept) => void
}

/** The second step: say what the columns mean, correct what is at fault, answer what is asked, and keep. */
export function MatchTable({ trialId, factors, paste, table, check, onKept }: MatchTableProps) {
  const keeping = useKeep(trialId, paste)
  const heading = useRef<HTMLHeadingElement>(null)
  const foot = useRef<HTMLDivElement>(null)
  const [goTo, setGoTo] = useState<Cell | undefined>()
  const [page, setPage] = useState(0)
  // The order stays while rows are mended, so that none is taken away from under the hands.
  const [led, setLed] = useState(check)
  const order = useMemo(() => rowOrder(table.rows.length, marksOf(led).keys()), [led, table.rows.length])
  const rows = useMemo(() => rowsOfPage(order, page), [order, page])
  useEffect(() => heading.current?.focus({ preventScroll: true }), [])

  const lead = (cell: Cell): void => {
    if (pagesOf(order.length) > 1) setPage(Math.floor(order.indexOf(cell.row) / 100))
    setGoTo({ ...cell })
  }
  const keep = async (which: 'all' | 'ready'): Promise<void> => {
    const kept = await keeping.keep(which)
    if (kept) onKept(kept)
  }
  return (
    <div class="paste-mend">
      <div class="paste-body">
        <div class="paste-title">
          <div>
            <h2 ref={heading} tabIndex={-1}>
              {counted(table.rows.length, 'row')}, {counted(table.headings.length, 'column')}
            </h2>
            <p class="soft">{recognised(check)}</p>
          </div>
          <Button kind="plain" onPress={() => paste.begin('')}>
            Paste another table
          </Button>
        </div>
        <p id="paste-keys" class="visually-hidden">
          Arrow keys move from cell to cell, Escape leaves the table.
        </p>
        <Grid
          table={table}
          check={check}
          factors={factors}
          rows={rows}
          goTo={goTo}
          onMean={paste.mean}
          onType={paste.type}
          onLeave={() => foot.current?.focus()}
        />
        <RowPages
          order={order}
          page={page}
          onPage={setPage}
          onFirst={() => {
            setLed(check)
            setPage(0)
          }}
        />
      </div>
      <aside class="paste-margin" aria-labelledby="paste-says">
        <h2 id="paste-says">What the rows say</h2>
        <Asks check={check} paste={paste} />
        <RowNotes check={check} paste={paste} onGoTo={lead} />
        <MoreAsks check={check} paste={paste} />
      </aside>
      <div class="paste-end" ref={foot} tabIndex={-1}>
        <ProblemNote refused={keeping.refused ?? paste.refused} />
        <FootBar
          check={check}
          checking={paste.checking}
          busy={keeping.busy}
          onKeep={(which) => void keep(which)}
        />
      </div>
    </div>
  )
}

function recognised({ columns }: TableCheck): string {
  const unknown = columns
    .filter((column) => column.as === 'ignore')
    .map(({ heading }) => heading || 'no heading')
  const rest = 'Change what a column means in its second line; nothing is kept yet.'
  if (unknown.length === 0) return `Every column was recognised from its name. ${rest}`
  return `${listed(unknown)} ${unknown.length === 1 ? 'is' : 'are'} not used. ${rest}`
}
