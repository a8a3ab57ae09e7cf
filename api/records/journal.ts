import { isDeepStrictEqual } from 'node:util'
import type { Kysely } from 'kysely'
import { skein } from '#api/contract/skein.ts'
import type { Added } from '#db/add-rows.ts'
import { trialsOf } from '#db/belonging.ts'
import { type Entry, keepEntries } from '#db/journal.ts'
import { findRow, type PlainTable } from '#db/rows.ts'
import type { SkeinChange } from '#db/skein-change.ts'
import type { Database } from '#db/tables.ts'
import { goingWith } from './going-with.ts'
import type { Judged, RowOf } from './noun.ts'
import { presentPlain } from './present.ts'
import type { Said } from './said.ts'

type Tx = Kysely<Database>
type Shown = Readonly<Record<string, unknown>>

/** What the journal has to know of a noun; every declared noun says it. */
export type Journalled<T extends PlainTable> = {
  readonly table: T
  readonly noun: string
  readonly measured: boolean
  readonly present: (row: RowOf<T>) => Shown
  readonly touches: (tx: Tx, rows: readonly RowOf<T>[]) => Promise<readonly string[]>
  readonly judged?: Judged<T>
}
type Kept = { readonly said: Said; readonly skeins?: readonly SkeinChange[] }

/** Keeps new rows of what is judged in the journal; of a measured noun only corrections, with what they correct. */
export async function keepAdded<T extends PlainTable>(
  tx: Tx,
  it: Journalled<T>,
  { rows, madeIds }: Pick<Added<T>, 'rows' | 'madeIds'>,
  { said, skeins = [] }: Kept,
): Promise<void> {
  if (!it.judged) return
  const news = rows
    .map((row) => ({ row, after: it.present(row) }))
    .filter(({ after }) => madeIds.has(String(after.id)) && (!it.measured || after.supersedesId !== null))
  const trials = await trialsBehind(
    tx,
    it.judged,
    news.map(({ row }) => row),
  )
  const entries: Entry[] = []
  for (const [index, { row, after }] of news.entries()) {
    const skeinIds = await it.touches(tx, [row])
    const entry = { trialId: trials[index] ?? null, noun: it.noun, who: said.who, after, skeinIds }
    if (it.measured) {
      const old = await findRow(tx, it.table, String(after.supersedesId))
      if (!old) throw new Error(`what this ${it.noun} corrects is gone`)
      // What is corrected is marked by now; before, it was the current one.
      const before = { ...it.present(old), superseded: false }
      const reason = String(after.reason)
      entries.push({ ...entry, recordId: String(after.supersedesId), action: 'corrected', before, reason })
    } else {
      const { reason } = said
      entries.push({ ...entry, recordId: String(after.id), action: 'added', before: null, reason })
    }
  }
  await keepEntries(tx, [...entries, ...entriesOfSkeins(skeins, said)])
}

/** Keeps a change in the journal when it changed something that is judged. */
export async function keepChanged<T extends PlainTable>(
  tx: Tx,
  it: Journalled<T>,
  [before, after]: readonly [RowOf<T>, RowOf<T>],
  { said, skeins = [], touched }: Kept & { readonly touched: readonly string[] },
): Promise<void> {
  if (!it.judged) return
  const shown = { before: it.present(before), after: it.present(after) }
  if (isSameJudged(shown.before, shown.after, it.judged.but.map(String))) return
  const [trialId = null] = await trialsBehind(tx, it.judged, [after])
  const recordId = String(shown.after.id)
  const entry = { trialId, noun: it.noun, recordId, ...said, action: 'changed' as const, ...shown }
  await keepEntries(tx, [{ ...entry, skeinIds: touched }, ...entriesOfSkeins(skeins, said)])
}

/** Keeps what is about to be removed in the journal, after everything that goes with it. */
export async function keepRemoved<T extends PlainTable>(
  tx: Tx,
  it: Journalled<T>,
  row: RowOf<T>,
  { said, touched }: Kept & { readonly touched: readonly string[] },
): Promise<void> {
  if (!it.judged) return
  const [trialId = null] = await trialsBehind(tx, it.judged, [row])
  const before = it.present(row)
  const recordId = String(before.id)
  const removed = { trialId, ...said, action: 'removed' as const, after: null }
  const going = (await goingWith(tx, it.table, recordId)).map((hanging) => ({ ...removed, ...hanging }))
  await keepEntries(tx, [...going, { ...removed, noun: it.noun, recordId, before, skeinIds: touched }])
}

/** Keeps skeins in the journal that changed along with something else. */
export async function keepSkeins(tx: Tx, skeins: readonly SkeinChange[], said: Said): Promise<void> {
  await keepEntries(tx, entriesOfSkeins(skeins, said))
}

async function trialsBehind<T extends PlainTable>(
  tx: Tx,
  judged: Judged<T>,
  rows: readonly RowOf<T>[],
): Promise<(string | null)[]> {
  const of = rows.map((row) => judged.of(row))
  const trials = new Map<string, string | null>()
  for (const table of new Set(of.map((it) => it.table))) {
    const ids = of.flatMap((it) => (it.table === table && it.id !== null ? [it.id] : []))
    for (const [id, trialId] of await trialsOf(tx, table, ids)) trials.set(id, trialId)
  }
  return of.map(({ id }) => (id === null ? null : (trials.get(id) ?? null)))
}

/** Whether a finding sees no difference: not of versions, names and notes, and of a status only whether it is lost. */
function isSameJudged(one: Shown, other: Shown, but: readonly string[]): boolean {
  const judged = ({ version: _version, status, ...rest }: Shown) => ({
    columns: Object.entries(rest).filter(([column]) => !but.includes(column)),
    lost: status === 'lost',
  })
  return isDeepStrictEqual(judged(one), judged(other))
}

const presentSkein = presentPlain(skein)

function entriesOfSkeins(skeins: readonly SkeinChange[], said: Said): Entry[] {
  const entries = skeins.map(({ before, after }) => ({
    trialId: after.trialId,
    noun: 'skein',
    recordId: after.id,
    ...said,
    action: 'changed' as const,
    before: presentSkein(before),
    after: presentSkein(after),
    skeinIds: [after.id],
  }))
  return entries.filter(({ before, after }) => !isSameJudged(before, after, ['code']))
}
