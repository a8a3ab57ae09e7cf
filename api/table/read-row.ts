import { bounds, isVariable } from '#api/contract/bounds.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { readDecimal } from '#api/contract/quantity.ts'
import type { CellFault, Column, NewTable } from '#api/contract/table.ts'
import type { Wear } from '#api/contract/wear.ts'
import { wearInWords } from '#api/contract/wear-words.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { type CellRead, readOutcome, readVariable } from './read-cell.ts'
import { levelIn } from './read-level.ts'
import type { TableRow } from './read-table.ts'
import type { LevelValue, OutcomeValue, ReadingValue, RowRead, RowValues, TableFactor } from './row-values.ts'

type Answers = Pick<NewTable, 'between'>
type Texts =
  | 'session'
  | 'place'
  | 'skein'
  | 'vessel'
  | 'lot'
  | 'card'
  | 'equipment'
  | 'item'
  | 'frame'
  | 'base'
  | 'lost because'

/** Reads one row by the map. Faults name line and column, what was read and what is allowed. */
export function readRow(
  row: TableRow,
  number: number,
  {
    columns,
    factors,
    answers,
  }: { columns: readonly Column[]; factors: ReadonlyMap<string, TableFactor>; answers: Answers },
): RowRead {
  const faults: CellFault[] = []
  const doubts: CellFault[] = []
  const blanks: { column: number }[] = []
  const commas: string[] = []
  const texts: Partial<Record<Texts, string>> = {}
  const levels: LevelValue[] = []
  const outcomes: OutcomeValue[] = []
  const conditions: Record<string, number> = {}
  const axes = new Map<
    string,
    { wear: Wear; at: Partial<Record<'L' | 'a' | 'b', number>>; columns: number[] }
  >()
  let massG: number | null = null
  let worn: Wear | null = null

  const said = (
    column: number | null,
    read: string,
    title: string,
    detail: string,
    suggestion?: string,
  ): CellFault => ({
    row: number,
    line: row.line,
    column,
    heading: column === null ? null : (columns[column]?.heading ?? null),
    read,
    title,
    detail,
    suggestion: suggestion ?? null,
  })
  const take = (
    column: number,
    cell: string,
    name: string,
    read: CellRead,
  ): { value: number; text?: string } | undefined => {
    const title = `Row ${number}, ${name}: ${cell || 'blank'}`
    if (read.kind === 'fault') faults.push(said(column, cell, title, shortened(read.detail), read.suggestion))
    if (read.kind !== 'value') return undefined
    if (read.doubt) doubts.push(said(column, cell, title, shortened(read.doubt)))
    if (/^\D*\d*,\d+\D*$/.test(cell)) commas.push(cell)
    return read
  }

  for (const [i, column] of columns.entries()) {
    const cell = (row.cells[i] ?? '').trim()
    switch (column.as) {
      case 'ignore':
        break
      case 'L':
      case 'a':
      case 'b': {
        const wear = wearOf(column, answers)
        const key = JSON.stringify([column.when ?? '', wear])
        const group = axes.get(key) ?? { wear, at: {}, columns: [] }
        axes.set(key, group)
        group.columns.push(i)
        const read = take(
          i,
          cell,
          `${column.as}*${column.when ? ` ${column.when}` : ''}`,
          readVariable(cell, column.as),
        )
        if (read) group.at[column.as] = read.value
        else if (cell !== '') group.at[column.as] = Number.NaN
        break
      }
      case 'outcome': {
        const kind = column.kind ?? column.heading
        const read = take(i, cell, outcomeKind(kind).label.toLowerCase(), readOutcome(cell, kind))
        if (!read) {
          if (cell === '') blanks.push({ column: i })
          break
        }
        outcomes.push({
          kind,
          value: read.value,
          text: column.text ?? read.text ?? null,
          unit: column.unit ?? outcomeKind(kind).unit ?? null,
          fibre: column.fibre ?? null,
          wear: wearOf(column, answers),
          of: column.of ?? 'skein',
          level: column.level ?? null,
          role: column.role ?? null,
        })
        break
      }
      case 'level': {
        const factor = factors.get(column.factor ?? '')
        if (!factor) break
        const level = levelIn(cell, factor, column.unit)
        if ('detail' in level)
          faults.push(
            said(
              i,
              cell,
              `Row ${number}, ${factor.label}: ${cell || 'blank'}`,
              level.detail,
              level.suggestion,
            ),
          )
        else levels.push(level)
        break
      }
      case 'condition': {
        if (!column.key || !isVariable(column.key)) break
        const read = take(i, cell, bounds[column.key].label, readVariable(cell, column.key, column.unit))
        if (read) conditions[column.key] = read.value
        break
      }
      case 'mass': {
        const read = take(i, cell, 'weight', readVariable(cell, 'fibreMass', column.unit))
        if (read) massG = read.value
        break
      }
      case 'worn': {
        const amount = readDecimal(cell)
        const axis = column.axis ?? 'W2'
        if (amount === undefined)
          faults.push(said(i, cell, `Row ${number}, ${column.heading}: blank`, 'How often? 0 is untouched.'))
        else if (typeof amount !== 'number' || !(amount >= 0) || amount > 10_000)
          faults.push(said(i, cell, `Row ${number}, ${column.heading}: ${cell}`, 'A number from 0 to 10000.'))
        else worn = amount === 0 ? {} : { [axis]: amount }
        break
      }
      default:
        if (cell !== '') texts[column.as] = cell
        if (cell.length > 200)
          faults.push(
            said(
              i,
              `${cell.slice(0, 40)}…`,
              `Row ${number}, ${column.heading}`,
              'This takes at most 200 characters.',
            ),
          )
        if (cell.includes('\u0000'))
          faults.push(
            said(i, 'a NUL character', `Row ${number}, ${column.heading}`, 'Take the NUL character out.'),
          )
        break
    }
  }

  const beyond = row.cells.slice(columns.length).filter((cell) => cell.trim() !== '')
  if (beyond.length > 0)
    faults.push(
      said(
        null,
        beyond.join(', '),
        `Row ${number}: ${row.cells.length} cells under ${columns.length} headings`,
        'A cell with a comma in it stands in quotation marks; a file with decimal commas is parted by semicolons.',
      ),
    )

  const readings: ReadingValue[] = []
  for (const { wear, at, columns: places } of axes.values()) {
    const { L, a, b } = at
    if (L === undefined && a === undefined && b === undefined) continue
    if (L === undefined || a === undefined || b === undefined) {
      const missing = (['L', 'a', 'b'] as const)
        .filter((axis) => at[axis] === undefined)
        .map((axis) => `${axis}*`)
      faults.push(
        said(
          places[0] ?? null,
          '',
          `Row ${number}: ${missing.join(' and ')} missing`,
          'A colour needs L*, a* and b* together, or none of them.',
        ),
      )
      continue
    }
    if (Number.isNaN(L + a + b)) continue
    const before = readings.find((it) => Object.keys(it.wear).length === 0)
    if (before && Object.keys(worn ?? wear).length > 0) {
      const change = ciede2000({ L: before.l, a: before.a, b: before.b }, { L, a, b })
      if (change > anotherColour)
        doubts.push(
          said(
            places[0] ?? null,
            row.cells[places[0] ?? 0] ?? '',
            `Row ${number}: another colour after ${wearInWords(worn ?? wear)}`,
            `It changed by ${Math.round(change)} ΔE00: more than fading does. Is it the same skein? Keep it?`,
          ),
        )
    }
    readings.push({ wear: worn ?? wear, l: L, a, b })
  }

  const values: RowValues = {
    row: number,
    line: row.line,
    session: texts.session ?? null,
    place: texts.place ?? null,
    skein: texts.skein ?? null,
    vessel: texts.vessel ?? null,
    lot: texts.lot ?? null,
    card: texts.card ?? null,
    equipment: texts.equipment ?? null,
    item: texts.item ?? null,
    frame: texts.frame ?? null,
    base: texts.base ?? null,
    massG,
    lostBecause: texts['lost because'] ?? null,
    levels,
    readings,
    outcomes: worn ? outcomes.map((outcome) => ({ ...outcome, wear: worn as Wear })) : outcomes,
    conditions,
    worn,
  }
  return { values, faults, doubts, blanks, commas }
}

/** A larger change than this between before and after, in ΔE00, is taken for another skein and asked about; our choice. */
const anotherColour = 40

/** “L* 460 is outside 0–100.” as “Outside 0–100.”: the title beside it says the rest. */
function shortened(detail: string): string {
  const rest = /^.{1,80}? is ((?:outside|above|below|not the usual|unusual|twice|[\w.]+ times) .*)$/.exec(
    detail,
  )?.[1]
  return rest === undefined ? detail : rest.charAt(0).toUpperCase() + rest.slice(1)
}

/** The wear at which a column was read; `before`, and what names none, is untouched. */
function wearOf(column: Column, answers: Answers): Wear {
  if (column.wear) return column.wear
  return column.when === 'after' ? (answers.between ?? {}) : {}
}
