import { wearKey } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import { counted } from '#api/words/numbers.ts'
import type { ReadingSeen, SkeinRecord } from '#db/trial-record.ts'
import type { Condition } from './condition.ts'
import { resultsFor } from './judged-rows.ts'
import type { JudgedTrial } from './judged-trial.ts'

/** Whether what is compared was measured in one way, before and after. */
export type MeasuredAlike = {
  readonly alike: boolean
  /** Treated skeins whose difference was typed in without its readings. */
  readonly typed: number
  /** What differs, a sentence each. */
  readonly found: readonly string[]
}

type Reading = Pick<
  ReadingSeen,
  'method' | 'instrumentId' | 'illuminant' | 'observer' | 'geometry' | 'apertureMm' | 'spotsN' | 'wet'
>

type Way = {
  readonly of: (it: Reading) => string
  /** Readings that differ in it are never compared. */
  readonly setting: boolean
  readonly changed: string
  readonly unlike: string
}

const another = (what: string): Pick<Way, 'changed' | 'unlike'> => ({
  changed: `${what} after the wear than before`,
  unlike: `${what} than the others`,
})
const ways: readonly Way[] = [
  {
    ...another('with another instrument'),
    setting: false,
    of: (it) => JSON.stringify([it.method, it.instrumentId]),
  },
  { ...another('under another illuminant'), setting: true, of: (it) => plain(it.illuminant) || 'd65' },
  { ...another('for another observer'), setting: true, of: (it) => plain(it.observer) || '10' },
  {
    ...another('with another geometry or aperture'),
    setting: true,
    of: (it) => JSON.stringify([plain(it.geometry), it.apertureMm]),
  },
  { ...another('at another number of spots'), setting: false, of: (it) => String(it.spotsN) },
  {
    changed: 'wet one time and dry the other',
    unlike: 'wet and others dry',
    setting: true,
    of: (it) => (it.wet ? 'wet' : 'dry'),
  },
]

/**
 * Was every treated skein measured the same way before the wear and after it? Of colours before any wear: was every
 * skein measured like the others?
 */
export function measuredAlike(trial: JudgedTrial, condition: Condition): MeasuredAlike {
  const { record } = trial
  const treated = record.skeins.filter((it) => it.role === 'treated' || it.role === 'bled')
  const readings = groupBy(record.readings, (it) => it.skeinId)
  const untouched = (id: string) => (readings.get(id) ?? []).filter((it) => wearKey(it.wear) === '')
  const found =
    Object.keys(condition.wear).length === 0
      ? unlikeTheOthers(treated.map((it) => untouched(it.id)))
      : changedWay(pairsOfReadings(trial, treated, condition))
  const results = resultsFor(trial, condition)
  const typed =
    condition.outcome === 'dE00' ? treated.filter((it) => results.get(it.id)?.dL === null).length : 0
  return { alike: found.length === 0, typed, found }
}

type BeforeAfter = { readonly before: readonly ReadingSeen[]; readonly after: readonly ReadingSeen[] }

function pairsOfReadings(
  { record, histories }: JudgedTrial,
  skeins: readonly SkeinRecord[],
  { wear }: Pick<Condition, 'wear'>,
): BeforeAfter[] {
  const readings = groupBy(record.readings, (it) => it.skeinId)
  const at = (id: string, key: string) => (readings.get(id) ?? []).filter((it) => wearKey(it.wear) === key)
  return skeins.flatMap((skein) => {
    const after = at(skein.id, wearKey(wear))
    const own = at(skein.id, '')
    const before = own.length > 0 ? own : at(histories.parentOf(skein)?.id ?? '', '')
    return before.length === 0 || after.length === 0 ? [] : [comparable({ before, after })]
  })
}

/** Only readings under the same settings are compared; where there are such, the others do not count. */
function comparable({ before, after }: BeforeAfter): BeforeAfter {
  const shared = new Set(before.map(settings))
  const alike = after.filter((it) => shared.has(settings(it)))
  const kept = new Set(alike.map(settings))
  return alike.length === 0
    ? { before, after }
    : { before: before.filter((it) => kept.has(settings(it))), after: alike }
}

const settings = (it: Reading): string =>
  JSON.stringify([it.method, ...ways.filter((way) => way.setting).map((way) => way.of(it))])

function changedWay(pairs: readonly BeforeAfter[]): string[] {
  const found = ways.flatMap((way) => {
    const differing = pairs.filter(({ before, after }) => new Set([...before, ...after].map(way.of)).size > 1)
    return differing.length === 0 ? [] : [`${skeinsRead(differing.length)} ${way.changed}.`]
  })
  const placings = pairs.filter(({ before, after }) => placingsOf(before) !== placingsOf(after))
  if (placings.length === 0) return found
  return [...found, `${skeinsRead(placings.length)} more often in a sitting one time than the other.`]
}

function unlikeTheOthers(skeins: readonly (readonly ReadingSeen[])[]): string[] {
  const read = skeins.filter((it) => it.length > 0)
  return ways.flatMap((way) => {
    const groups = [...groupBy(read, (it) => [...new Set(it.map(way.of))].sort().join()).values()]
    const most = Math.max(0, ...groups.map((it) => it.length))
    return groups.length < 2 ? [] : [`${skeinsRead(read.length - most)} ${way.unlike}.`]
  })
}

function skeinsRead(n: number): string {
  return `${counted(n, { one: 'skein was', many: 'skeins were' })} read`
}

/** Readings of a skein in one sitting, the most there were. */
function placingsOf(readings: readonly ReadingSeen[]): number {
  return Math.max(...[...groupBy(readings, (it) => it.sittingId).values()].map((it) => it.length))
}

function plain(text: string | null): string {
  return (text ?? '').toLowerCase().replace(/[°\s]/g, '')
}
