import { cgatsTable, isCgats } from './cgats-table.ts'
import { delimitedTable } from './delimited-table.ts'
import type { InstrumentFault, InstrumentTable } from './instrument-table.ts'
import type { Lab } from './lab.ts'
import { spectralWeights } from './spectral-weights.ts'
import { type Spectrum, spectrumToXyz } from './spectrum-to-lab.ts'
import { xyzToLab } from './xyz-to-lab.ts'

/** One row of an instrument's file. With a spectrum the colour is worked out from it, for D65/10°. */
export type InstrumentReading = {
  readonly line: number
  readonly sampleId: string
  readonly lab: Lab
  readonly spectrum?: Spectrum
}

export type InstrumentFile = {
  readonly readings: readonly InstrumentReading[]
  readonly faults: readonly InstrumentFault[]
  /** What the colours were worked out from; L*a*b* as printed is under whatever the instrument was set to. */
  readonly from: 'spectrum' | 'lab' | 'nothing'
  /** What the file says of itself, such as ILLUMINANT or WEIGHTING_FUNCTION; keywords in capitals. */
  readonly keywords: Readonly<Record<string, string>>
}

type Columns = { id: number; lab: readonly [number, number, number] | undefined; bands: readonly Band[] }
type Band = { readonly column: number; readonly nm: number }

/**
 * The readings in a file that an instrument wrote: CGATS.17 text, or a table with a head line (CSV). A column
 * SAMPLE_ID names the skein; the colour is in LAB_L, LAB_A, LAB_B (or L*, a*, b*), or in a column for each
 * wavelength (SPECTRAL_NM400, 400 nm, 400). A line that cannot be read is a fault with its number and reason; the
 * other lines are read all the same. Never throws for a text.
 *
 * @example
 * instrumentFile('SAMPLE_ID,L*,a*,b*\nS1,50,1.5,-2').readings // [{ line: 2, sampleId: 'S1', lab: { L: 50, a: 1.5, b: -2 } }]
 */
export function instrumentFile(text: string): InstrumentFile {
  if (hasTooManyLines(text)) {
    const faults = [
      { line: mostLines, reason: 'A file may hold 100,000 lines. Send the rest in a second one.' },
    ]
    return { readings: [], faults, from: 'nothing', keywords: {} }
  }
  const table = isCgats(text) ? cgatsTable(text) : delimitedTable(text)
  const faults = [...table.faults]
  const columns = columnsOf(table, faults)
  if (columns === undefined) return { readings: [], faults, from: 'nothing', keywords: table.keywords }
  const readings =
    columns.bands.length > 0 ? spectralReadings(table, columns, faults) : labReadings(table, columns, faults)
  if (table.rows.length === 0) faults.push({ line: 1, reason: 'There are no readings in this file.' })
  faults.sort((one, other) => one.line - other.line)
  return { readings, faults, from: columns.bands.length > 0 ? 'spectrum' : 'lab', keywords: table.keywords }
}

const mostLines = 100_000

function hasTooManyLines(text: string): boolean {
  let lines = 1
  for (let at = 0; at < text.length && lines <= mostLines; at++) {
    const sign = text.charCodeAt(at)
    if (sign === 10 || (sign === 13 && text.charCodeAt(at + 1) !== 10)) lines++
  }
  return lines > mostLines
}

/** A wavelength each nanometre, and as many words beside. */
const mostColumns = 1000

function columnsOf(table: InstrumentTable, faults: InstrumentFault[]): Columns | undefined {
  if (table.columns.length > mostColumns) {
    faults.push({ line: 1, reason: `A file may hold ${mostColumns} columns.` })
    return undefined
  }
  const names = table.columns.map((name) => name.trim().toUpperCase())
  const find = (...known: string[]) => names.findIndex((name) => known.includes(name))
  const id = find('SAMPLE_ID', 'SAMPLEID', 'SAMPLE ID', 'SAMPLE')
  if (id < 0) {
    faults.push({ line: 1, reason: 'There is no column SAMPLE_ID to tell which skein was read.' })
    return undefined
  }
  const bands = names
    .map((name, column) => ({ column, nm: wavelengthOf(name) }))
    .filter((band): band is Band => band.nm !== undefined)
    .sort((one, other) => one.nm - other.nm)
  const [L, a, b] = [
    find('LAB_L', 'L*', 'L', 'CIE L*'),
    find('LAB_A', 'A*', 'A', 'CIE A*'),
    find('LAB_B', 'B*', 'B', 'CIE B*'),
  ]
  const hasLab = L >= 0 && a >= 0 && b >= 0
  if (bands.length === 0 && !hasLab) {
    faults.push({ line: 1, reason: 'There are neither L*, a*, b* nor wavelengths among the columns.' })
    return undefined
  }
  if (bands.length > 0) {
    const reason = whyNoGrid(bands)
    if (reason !== undefined && !hasLab) {
      faults.push({ line: 1, reason })
      return undefined
    }
    if (reason !== undefined) {
      faults.push({ line: 1, reason: `${reason} The printed L*, a*, b* are taken instead.` })
      return { id, lab: [L, a, b], bands: [] }
    }
  }
  return { id, lab: hasLab ? [L, a, b] : undefined, bands }
}

function wavelengthOf(name: string): number | undefined {
  const digits = /^(?:SPECTRAL_NM_?|SPECTRAL_|SPEC_|NM_?|R_?)?([3-7]\d\d)(?:\.0+)?(?: ?NM)?$/.exec(name)?.[1]
  const nm = Number(digits)
  return digits !== undefined && nm >= 360 && nm <= 780 ? nm : undefined
}

function whyNoGrid(bands: readonly Band[]): string | undefined {
  try {
    spectralWeights(bands.map(({ nm }) => nm))
    return undefined
  } catch (error) {
    if (error instanceof RangeError) return error.message
    throw error
  }
}

function labReadings(
  table: InstrumentTable,
  { id, lab }: Columns,
  faults: InstrumentFault[],
): InstrumentReading[] {
  const readings: InstrumentReading[] = []
  if (lab === undefined) return readings
  for (const row of table.rows) {
    const sampleId = idOf(row, id, table, faults)
    if (sampleId === undefined) continue
    const at = (axis: 0 | 1 | 2) => numberOf(row.cells[lab[axis]])
    const colour = { L: at(0), a: at(1), b: at(2) }
    if (!Object.values(colour).every(Number.isFinite))
      faults.push({ line: row.line, reason: 'L*, a* and b* are not all numbers.' })
    else if (!isWithinBounds(colour)) faults.push({ line: row.line, reason: outOfBounds })
    else readings.push({ line: row.line, sampleId, lab: colour })
  }
  return readings
}

function spectralReadings(
  table: InstrumentTable,
  columns: Columns,
  faults: InstrumentFault[],
): InstrumentReading[] {
  const { id, bands } = columns
  const wavelengths = bands.map(({ nm }) => nm)
  const weights = spectralWeights(wavelengths)
  const full = fullScale(table, bands)
  const readings: InstrumentReading[] = []
  for (const row of table.rows) {
    const sampleId = idOf(row, id, table, faults)
    if (sampleId === undefined) continue
    const reflectance = bands.map(({ column }) => numberOf(row.cells[column]) / full)
    const bad = reflectance.findIndex((value) => !Number.isFinite(value))
    const out = reflectance.findIndex((value) => value < 0 || value > 1.5)
    if (bad >= 0)
      faults.push({ line: row.line, reason: `The reflectance at ${wavelengths[bad]} nm is not a number.` })
    else if (out >= 0)
      faults.push({
        line: row.line,
        reason: `The reflectance at ${wavelengths[out]} nm is outside what yarn can reflect.`,
      })
    else {
      const lab = xyzToLab(spectrumToXyz(reflectance, weights), weights.white)
      if (isWithinBounds(lab))
        readings.push({ line: row.line, sampleId, lab, spectrum: { wavelengths, reflectance } })
      else faults.push({ line: row.line, reason: outOfBounds })
    }
  }
  return readings
}

const outOfBounds = 'L* is 0–100, a* and b* are −128–127.'

function isWithinBounds({ L, a, b }: Lab): boolean {
  return L >= 0 && L <= 100 && Math.min(a, b) >= -128 && Math.max(a, b) <= 127
}

/** Reflectance is written as a fraction or in percent; the file may say so, else the largest value tells. */
function fullScale(table: InstrumentTable, bands: readonly Band[]): 1 | 100 {
  const said = Number(table.keywords.SPECTRAL_NORM)
  if (said === 1 || said === 100) return said
  const values = table.rows.flatMap(({ cells }) => bands.map(({ column }) => numberOf(cells[column])))
  return values.some((value) => value > 1.5) ? 100 : 1
}

function idOf(
  row: { line: number; cells: readonly string[] },
  id: number,
  table: InstrumentTable,
  faults: InstrumentFault[],
): string | undefined {
  if (row.cells.length !== table.columns.length) {
    const counts = `${row.cells.length} values for ${table.columns.length} columns`
    faults.push({ line: row.line, reason: `This line has ${counts}.` })
    return undefined
  }
  const sampleId = row.cells[id]?.trim() ?? ''
  if (sampleId !== '') return sampleId
  faults.push({ line: row.line, reason: 'SAMPLE_ID is empty.' })
  return undefined
}

/** "12,5" and "12.5" are the same number; blank or anything else is none. */
function numberOf(cell: string | undefined): number {
  const text = (cell ?? '').trim().replace('−', '-')
  return /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i.test(text)
    ? Number(text.replace(',', '.'))
    : Number.NaN
}
