import type { Level, LevelRow } from './level-rows.ts'

/** A vessel's mean at one level. */
export type VesselResult = {
  readonly block: string | undefined
  readonly vessel: string | undefined
  readonly value: number
}

export type LevelResults = {
  /** Rows of one level, block and vessel averaged. A row with neither block nor vessel stands for itself. */
  readonly vessels: readonly VesselResult[]
  /** Vessels of a block averaged. */
  readonly blocks: ReadonlyMap<string, number>
  /** What a comparison without blocks counts: blocks where rows have them, else vessels, else rows. */
  readonly units: readonly number[]
}

/**
 * The results of each level, averaged from row to vessel to block, by the level's text. Rows without a result are left out.
 *
 * @example
 * resultsByLevel([{ level: 20, block: 'Mon', vessel: 'a', value: 1 }, { level: 20, block: 'Mon', vessel: 'a', value: 2 }]).get('20').units // [1.5]
 */
export function resultsByLevel(
  rows: readonly LevelRow[],
  change: (value: number) => number = (value) => value,
): ReadonlyMap<string, LevelResults> {
  const vessels = new Map<string, Map<string, Gathered>>()
  rows.forEach((row, place) => {
    if (row.value === undefined) return
    const ofLevel = entry(vessels, String(row.level), () => new Map<string, Gathered>())
    const gathered = entry(ofLevel, vesselKey(row, place), () => ({
      block: text(row.block),
      vessel: text(row.vessel),
      sum: 0,
      n: 0,
    }))
    gathered.sum += change(row.value)
    gathered.n++
  })
  return new Map([...vessels].map(([level, ofLevel]) => [level, resultsOf([...ofLevel.values()])]))
}

/**
 * The results of one level, empty when it has none.
 *
 * @example
 * resultsAt(resultsByLevel([{ level: 20, block: 'Mon', value: 1 }]), 35).units // []
 */
export function resultsAt(results: ReadonlyMap<string, LevelResults>, level: Level): LevelResults {
  return results.get(String(level)) ?? { vessels: [], blocks: new Map(), units: [] }
}

type Gathered = { block: string | undefined; vessel: string | undefined; sum: number; n: number }

function resultsOf(gathered: readonly Gathered[]): LevelResults {
  const vessels = gathered.map(({ block, vessel, sum, n }) => ({ block, vessel, value: sum / n }))
  const byBlock = new Map<string, number[]>()
  for (const { block, value } of vessels)
    if (block !== undefined) entry(byBlock, block, (): number[] => []).push(value)
  const blocks = new Map([...byBlock].map(([block, values]) => [block, meanOf(values)]))
  return { vessels, blocks, units: blocks.size > 0 ? [...blocks.values()] : vessels.map((it) => it.value) }
}

function vesselKey(row: LevelRow, place: number): string {
  if (row.vessel !== undefined) return JSON.stringify([text(row.block) ?? null, text(row.vessel)])
  return row.block === undefined ? `row ${place}` : JSON.stringify([text(row.block)])
}

function text(it: string | number | undefined): string | undefined {
  return it === undefined ? undefined : String(it)
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function entry<Key, Value>(map: Map<Key, Value>, key: Key, fresh: () => Value): Value {
  const there = map.get(key)
  if (there !== undefined) return there
  const made = fresh()
  map.set(key, made)
  return made
}
