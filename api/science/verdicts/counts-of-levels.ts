import type { UnitOfFactor } from '../design/unit-of-factor.ts'
import type { Level } from './level-rows.ts'
import type { LevelCount, TrialRow } from './trial-verdict.ts'

/**
 * Units, vessels, skeins and sessions of each level, apart: a skein read five times is one skein, and three skeins
 * of one packet are one unit. Lost skeins stay, with their reason.
 *
 * @param unit  Of the rows with a result, in their order.
 *
 * @example
 * const rows = [{ level: 35, session: 'Mon', vessel: 'p1', skein: 'a', value: 1 }, { level: 35, session: 'Mon', vessel: 'p1', skein: 'b', value: 2 }, { level: 35, session: 'Tue', vessel: 'p2', skein: 'c', value: undefined, lost: 'boiled dry' }]
 * countsOfLevels([35], rows, { unitOf: ['u', 'u'] }) // [{ level: 35, units: 1, vessels: 1, skeins: 2, sessions: 1, planned: 3, lost: [{ skein: 'c', reason: 'boiled dry' }], withoutResult: 0 }]
 */
export function countsOfLevels(
  ladder: readonly Level[],
  rows: readonly TrialRow[],
  unit: Pick<UnitOfFactor, 'unitOf'>,
): LevelCount[] {
  const withResult = rows.filter(hasResult)
  const units = new Map(withResult.map((row, place) => [row, unit.unitOf[place] ?? row.skein]))
  return ladder.map((level) => {
    const all = rows.filter((row) => String(row.level) === String(level))
    const read = all.filter(hasResult)
    return {
      level,
      units: distinct(read, (row) => units.get(row) ?? row.skein),
      vessels: distinct(read, (row) => JSON.stringify([row.session, row.vessel])),
      skeins: distinct(read, (row) => row.skein),
      sessions: distinct(read, (row) => row.session),
      readings: read.reduce((sum, row) => sum + (row.readings ?? 0), 0),
      planned: distinct(all, (row) => row.skein),
      lost: all.flatMap((row) => (row.lost === undefined ? [] : [{ skein: row.skein, reason: row.lost }])),
      withoutResult: all.filter((row) => row.lost === undefined && row.value === undefined).length,
    }
  })
}

/**
 * Is this row a result that counts: a value, of a skein that was not lost?
 *
 * @example
 * hasResult({ level: 35, session: 'Mon', vessel: 'p1', skein: 'a', value: 1.2, lost: 'dropped in the wash' }) // false
 */
export function hasResult(row: TrialRow): boolean {
  return row.lost === undefined && row.value !== undefined
}

function distinct<Row>(rows: readonly Row[], name: (row: Row) => string): number {
  return new Set(rows.map(name)).size
}
