import type { TableCheck } from '#api/contract/table.ts'
import { counted, grouped } from '#web/form/number-words.ts'
import { Button } from '#web/parts/button.tsx'

export type FootBarProps = {
  readonly check: TableCheck
  readonly checking: boolean
  readonly busy: string | undefined
  readonly onKeep: (which: 'all' | 'ready') => void
}

/** How the rows stand, and what can be done: keep them all, or keep the ready ones alone. */
export function FootBar({ check, checking, busy, onKeep }: FootBarProps) {
  const { rows, ready, atFault, doubtful } = check
  const all = atFault === 0 && doubtful === 0
  const needed = check.asks.filter((ask) => ask.needed)
  return (
    <div class="paste-foot">
      <p class="paste-counts" role="status">
        <strong>{grouped(ready)} ready</strong>
        {atFault === 0 ? '' : `, ${grouped(atFault)} at fault`}
        {doubtful === 0 ? '' : `, ${grouped(doubtful)} to confirm`}
        {needed.length === 0 ? '' : `, ${counted(needed.length, 'question')} to answer`}
        {checking ? <span class="soft">, reading …</span> : null}
      </p>
      <div class="row">
        {all || ready === 0 ? null : (
          <Button
            onPress={() => onKeep('ready')}
            waitsFor={
              needed.length === 0
                ? undefined
                : needed.length === 1
                  ? 'one answer'
                  : `${needed.length} answers`
            }
            busy={busy}
          >
            Keep the {counted(ready, 'ready row')}
          </Button>
        )}
        <Button kind="do" onPress={() => onKeep('all')} waitsFor={waitsFor(check, checking)} busy={busy}>
          {rows === 1 ? 'Keep the row' : `Keep all ${counted(rows, 'row')}`}
        </Button>
      </div>
    </div>
  )
}

function waitsFor({ asks, atFault, doubtful }: TableCheck, checking: boolean): string | undefined {
  if (atFault > 0) return `${counted(atFault, 'row')} at fault`
  if (doubtful > 0) return `${counted(doubtful, 'row')} to be confirmed`
  const needed = asks.filter((ask) => ask.needed).length
  if (needed > 0) return needed === 1 ? 'one answer' : `${needed} answers`
  return checking ? 'the table to be read' : undefined
}
