import type { Asked } from './asked.ts'
import type { JudgedRow } from './judged-rows.ts'
import { blockWords } from './units-in-words.ts'

/** What is counted in a comparison: sessions, cards or skeins; without blocks the vessels that were given a level. */
export function unitWords(
  { trial, method }: Pick<Asked, 'trial' | 'method'>,
  rows: readonly JudgedRow[],
): { readonly one: string; readonly many: string } {
  return method === 'pooled' ? vesselWords(trial, rows) : blockWords(trial)
}

/** The vessels of these rows by their kind, where they are all of one. */
export function vesselWords(
  trial: Asked['trial'],
  rows: readonly JudgedRow[],
): { readonly one: string; readonly many: string } {
  const ids = new Set(rows.map((it) => it.vessel))
  const kinds = new Set(trial.record.vessels.filter((it) => ids.has(it.id)).map((it) => it.kind))
  const [kind] = kinds
  return kinds.size === 1 && kind !== undefined
    ? { one: kind, many: `${kind}s` }
    : { one: 'vessel', many: 'vessels' }
}
