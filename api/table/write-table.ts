import { stringify } from 'csv-stringify/sync'
import { bounds, isVariable } from '#api/contract/bounds.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import type { Column } from '#api/contract/table.ts'
import { type Wear, wearKey } from '#api/contract/wear.ts'
import type { Pieces } from '#db/tables-kept.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import { headingParts } from './guess-columns.ts'
import { type Piece, pieceCells } from './piece-cells.ts'

/**
 * The table of a trial as CSV: the columns of the map that brought it in, units in the headings; without a map, one
 * column for everything that the pieces have. What a spreadsheet would take for a formula is made harmless.
 */
export function writeTable(
  pieces: Pieces,
  {
    map,
    between,
    factors,
  }: { map: readonly Column[] | null; between: Wear; factors: readonly FactorWithLevels[] },
): string {
  const columns = map ?? plainColumns(pieces, factors)
  const { cell, frames } = pieceCells(pieces, between)
  const framed = columns.some((column) => column.as === 'frame')
  const rows: string[][] = []
  for (const piece of rowsOf(pieces, columns)) {
    for (const frame of framed ? frames(piece) : [null])
      rows.push(columns.map((column) => harmless(cell(piece, column, frame))))
  }
  return stringify([columns.map(headingOf), ...rows], { record_delimiter: '\r\n' })
}

/**
 * A cell that a spreadsheet would take for a formula, with an apostrophe before it; a number stays a number.
 *
 * @example
 * [harmless('=1+1'), harmless('-14.1'), harmless('teal')] // ["'=1+1", '-14.1', 'teal']
 */
export function harmless(cell: string): string {
  if (/^[+-]?\d+(?:[.,]\d+)?$/.test(cell)) return cell
  return /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell
}

/** A heading with its unit, to be read by eye and by the import alike. */
function headingOf(column: Column): string {
  if (headingParts(column.heading).unit !== undefined) return harmless(column.heading)
  const unit = unitOf(column)
  return harmless(unit ? `${column.heading} [${unit}]` : column.heading)
}

function unitOf(column: Column): string | undefined {
  if (column.unit !== undefined) return column.unit
  const key = column.as === 'condition' ? column.key : column.as === 'level' ? column.factor : undefined
  if (key !== undefined && isVariable(key)) return bounds[key].unit
  if (column.as === 'outcome') return outcomeKind(column.kind ?? '').unit
  return column.as === 'mass' ? 'g' : undefined
}

function plainColumns(pieces: Pieces, factors: readonly FactorWithLevels[]): Column[] {
  const columns: Column[] = [
    { heading: 'session', as: 'session' },
    { heading: 'place', as: 'place' },
    { heading: 'skein', as: 'skein' },
    ...factors.map((factor): Column => ({ heading: factor.key, as: 'level', factor: factor.key })),
  ]
  const wears = new Map(pieces.readings.map((reading) => [wearKey(reading.wear), reading.wear]))
  for (const [key, wear] of [...wears].sort()) {
    for (const as of ['L', 'a', 'b'] as const)
      columns.push({ heading: key ? `${as} after ${key}` : as, as, wear })
  }
  const kinds = new Map<string, Column>()
  for (const { kind, fibre, wear, vesselId } of pieces.outcomes) {
    const key = wearKey(wear)
    const heading = [kind, fibre ? `of ${fibre}` : '', key ? `after ${key}` : ''].filter(Boolean).join(' ')
    kinds.set(heading, {
      heading,
      as: 'outcome',
      kind,
      ...(fibre ? { fibre } : {}),
      wear,
      of: vesselId ? 'vessel' : 'skein',
    })
  }
  return [...columns, ...kinds.values(), { heading: 'lost because', as: 'lost because' }]
}

/** The pieces that stand for a row: not the parts cut for one test, nor a whole that only its parts were taken from. */
function rowsOf(pieces: Pieces, columns: readonly Column[]): Piece[] {
  const codes = new Map(pieces.skeins.map((skein) => [skein.id, skein.code]))
  const tests = new Set(columns.flatMap(partName))
  const parents = new Set(pieces.skeins.map((skein) => skein.cutFromId))
  const placed = new Set(pieces.placements.map((placement) => placement.skeinId))
  const read = new Set(pieces.readings.map((reading) => reading.skeinId))
  return pieces.skeins.filter((skein) => {
    const parent = skein.cutFromId === null ? undefined : codes.get(skein.cutFromId)
    const suffix =
      parent !== undefined && skein.code.startsWith(`${parent} `)
        ? skein.code.slice(parent.length + 1)
        : undefined
    if (suffix !== undefined && (tests.has(suffix) || suffix.endsWith('dark'))) return false
    return placed.has(skein.id) || read.has(skein.id) || !parents.has(skein.id)
  })
}

function partName(column: Column): string[] {
  if (column.as !== 'outcome' || column.of !== 'part') return []
  return [
    column.level ??
      (Object.keys(column.wear ?? {})
        .sort()
        .join(' ') ||
        'part'),
  ]
}
