import { useState } from 'preact/hooks'
import type { TableKept, TableProgress } from '#api/contract/table.ts'
import { keepTable, progressOf } from '#web/api/table.ts'
import { grouped } from '#web/form/number-words.ts'
import type { Paste } from '#web/pages/trial/readings/paste.ts'

export type Keeping = {
  /** “Keeping … 40,000 of 100,000” while it is kept. */
  readonly busy: string | undefined
  readonly refused: unknown
  readonly keep: (which: 'all' | 'ready') => Promise<TableKept | undefined>
}

const everyMs = 500

/** Keeps a table and says meanwhile how far it is. */
export function useKeep(trialId: string, paste: Paste): Keeping {
  const [busy, setBusy] = useState<string | undefined>()
  const [refused, setRefused] = useState<unknown>()

  const keep = async (which: 'all' | 'ready'): Promise<TableKept | undefined> => {
    const sent = paste.sent()
    setBusy('Keeping …')
    setRefused(undefined)
    const timer = setInterval(() => {
      if (sent.id === undefined) return
      progressOf(trialId, sent.id).then(
        (progress) => {
          if (progress) setBusy((now) => (now === undefined ? now : progressWords(progress)))
        },
        // That the progress cannot be had says nothing of the table, whose own answer is still to come.
        () => undefined,
      )
    }, everyMs)
    try {
      return await keepTable(trialId, { ...sent, keep: which })
    } catch (cause) {
      setRefused(cause)
      return undefined
    } finally {
      clearInterval(timer)
      setBusy(undefined)
    }
  }
  return { busy, refused, keep }
}

/**
 * How far a table is, in words.
 *
 * @example
 * progressWords({ stage: 'keeping', done: 40000, of: 100000, ended: false }) // 'Keeping … 40,000 of 100,000'
 */
export function progressWords({ stage, done, of }: TableProgress): string {
  const doing = stage === 'checking' ? 'Checking …' : 'Keeping …'
  return of <= 1 ? doing : `${doing} ${grouped(done)} of ${grouped(of)}`
}
