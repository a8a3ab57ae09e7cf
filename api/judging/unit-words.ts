import type { Asked } from './asked.ts'
import type { JudgedRow } from './judged-rows.ts'

/** What is counted in a comparison: sessions, cards or skeins; without blocks the vessels that were given a level. */
export function unitWords(
  { trial, method }: Pick<Asked, 'trial' | 'method'>,
  rows: readonly JudgedRow[],
): { readonly one: string; readonly many: string } {
  const { block } = trial.record.trial
  if (method !== 'pooled' && block === 'session') return { one: 'session', many: 'sessions' }
  if (method !== 'pooled' && block === 'parent') return { one: 'skein', many: 'skeins' }
  return vesselWords(trial, rows)
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
