import './paste.css'
import { useEffect, useState } from 'preact/hooks'
import type { TableKept } from '#api/contract/table.ts'
import type { Factor } from '#api/contract/trial.ts'
import { KeptTable } from '#web/pages/trial/readings/kept-table.tsx'
import { MatchTable } from '#web/pages/trial/readings/match-table.tsx'
import { type Paste, usePaste } from '#web/pages/trial/readings/paste.ts'
import { PasteBox } from '#web/pages/trial/readings/paste-box.tsx'
import { Steps } from '#web/parts/steps.tsx'

const steps = ['Paste', 'Match and fix', 'Keep']
const naming = new Set(['place', 'skein', 'item', 'lot'])

export type PasteTableProps = {
  readonly trialId: string
  readonly factors: readonly Factor[]
  readonly onKept: () => void
  /** Whether a table is in hand: then nothing else is shown. */
  readonly onMending: (mending: boolean) => void
}

/** A table from a spreadsheet becomes readings: paste, match and fix, keep. */
export function PasteTable({ trialId, factors, onKept, onMending }: PasteTableProps) {
  const paste = usePaste(trialId)
  const [kept, setKept] = useState<TableKept | undefined>()
  const { table, check } = paste
  const at = kept !== undefined ? 2 : table !== undefined && check !== undefined ? 1 : 0
  useEffect(() => onMending(at === 1), [at])
  return (
    <div class="paste-table">
      <Steps names={steps} at={at} />
      {kept !== undefined ? (
        <KeptTable
          trialId={trialId}
          kept={kept}
          onLeftOut={leftOut(paste, kept, () => setKept(undefined))}
          onAnother={() => {
            paste.begin('')
            setKept(undefined)
          }}
        />
      ) : table !== undefined && check !== undefined ? (
        <MatchTable
          trialId={trialId}
          factors={factors}
          paste={paste}
          table={table}
          check={check}
          onKept={(done) => {
            setKept(done)
            onKept()
          }}
        />
      ) : (
        <PasteBox paste={paste} />
      )}
    </div>
  )
}

/** Going on with the rows left out, where the table names its pieces: a bare row number would name others then. */
function leftOut(
  { table, check, goOn }: Paste,
  kept: TableKept,
  before: () => void,
): (() => void) | undefined {
  if (table === undefined || !check?.columns.some((column) => naming.has(column.as))) return undefined
  return () => {
    before()
    goOn({
      ...table,
      rows: kept.leftOut.flatMap(({ row }) => {
        const cells = table.rows[row - 1]
        return cells === undefined ? [] : [cells]
      }),
    })
  }
}
