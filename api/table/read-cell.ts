import { bounds, doubtOf, refusal, type VariableKey } from '#api/contract/bounds.ts'
import { countsAs } from '#api/contract/condition-value.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { readDecimal } from '#api/contract/quantity.ts'
import { gradeNumber, grades } from '#api/science/fastness/grades.ts'

/** What a cell says: a value, a value to be looked at, or a fault with what was probably meant. */
export type CellRead =
  | { readonly kind: 'blank' }
  | { readonly kind: 'value'; readonly value: number; readonly text?: string; readonly doubt?: string }
  | { readonly kind: 'fault'; readonly detail: string; readonly suggestion?: string }

/**
 * A number within the bounds of a variable; the unit of its column, or one that stands in the cell itself (“27 h” in a
 * column of minutes), is turned into the table’s own. A unit that can’t be is asked about, never dropped.
 */
export function readVariable(cell: string, key: VariableKey, columnUnit = bounds[key].unit): CellRead {
  const own = unitInCell(cell)
  const unit = own?.unit ?? columnUnit
  const typed = numberIn(own?.number ?? cell)
  if (typeof typed !== 'number') return typed
  const counts = unit === bounds[key].unit ? undefined : countsAs(key, { amount: typed, unit })
  if (counts?.kind === 'fault') return fault(counts.detail)
  const read = counts?.kind === 'value' ? counts.value : typed
  const refused = refusal(key, read)
  if (refused)
    return fault(refused.detail, refused.suggestion === undefined ? undefined : String(refused.suggestion))
  const doubt = doubtOf(key, read)
  return { kind: 'value', value: read, ...(doubt ? { doubt } : {}) }
}

/** The bounds that stand in the table of variables for an outcome of a known kind. */
const variableOf: Partial<Record<string, VariableKey>> = {
  'rinses to 4': 'rinseCount',
  pH: 'pH',
  lightness: 'L',
  shortening: 'shortening',
}

/** A number of the kind of an outcome: grades as “3-4” or 3.5, steps as whole or half numbers. */
export function readOutcome(cell: string, kind: string): CellRead {
  const key = variableOf[kind]
  if (key) return readVariable(cell, key)
  const { scale, min = -1e9, max = 1e9, label } = outcomeKind(kind)
  if (scale === 'grade') return readGrade(cell)
  const read = numberIn(cell)
  if (typeof read !== 'number') return read
  if (read < min || read > max)
    return fault(`${label} ${read} is outside ${min}–${max}.`, movedPoint(read, min, max))
  if (scale === 'count' && !Number.isInteger(read)) return fault(`${label} ${read}: this is a whole number.`)
  if (scale === 'steps' && !Number.isInteger(read * 2)) return fault(`${label} ${read}: this goes in halves.`)
  return { kind: 'value', value: read }
}

function readGrade(cell: string): CellRead {
  const text = cell.trim().replaceAll('–', '-')
  if (text === '') return { kind: 'blank' }
  if ((grades as readonly string[]).includes(text)) return { kind: 'value', value: gradeNumber(text), text }
  const number = readDecimal(text)
  if (typeof number === 'number' && Number.isInteger(number * 2) && number >= 1 && number <= 5) {
    const grade = grades[(5 - number) * 2]
    return { kind: 'value', value: number, ...(grade ? { text: grade } : {}) }
  }
  const known = gradeMeant(text)
  return fault(`Grades are 1, 1-2, 2 … 5.${known ? ` Did you mean ${known}?` : ''}`, known)
}

/**
 * The number and the unit of a cell that has both; undefined for a number alone, or for words.
 *
 * @example
 * unitInCell('27 h') // { number: '27', unit: 'h' }
 */
export function unitInCell(cell: string): { readonly number: string; readonly unit: string } | undefined {
  const found = /^([+\-−]?[\d.,]+)\s*([a-zA-Z%°µ][^\d]{0,40})$/.exec(cell.trim())
  return found?.[1] && found[2] ? { number: found[1], unit: found[2].trim() } : undefined
}

const months = ['jan', 'feb', 'mar', 'apr', 'may']

/** What was probably meant: “4/5”, or “03-Apr”, the date that a spreadsheet makes of 3-4. */
function gradeMeant(text: string): string | undefined {
  const parts = text.toLowerCase().split(/[\s/,.-]+/)
  if (parts.length !== 2) return undefined
  const numbers = parts.map((part) => {
    const month = months.indexOf(part.slice(0, 3)) + 1
    return month > 0 ? month : /^0?[1-5]$/.test(part) ? Number(part) : Number.NaN
  })
  const meant = numbers.sort((a, b) => a - b).join('-')
  return grades.find((grade) => grade === meant)
}

function numberIn(cell: string): number | CellRead {
  const read = readDecimal(cell)
  if (read === undefined) return { kind: 'blank' }
  if (typeof read !== 'number') return fault('This is not a number.')
  if (!Number.isFinite(read)) return fault('This number is too large to be kept.')
  return read
}

function movedPoint(value: number, min: number, max: number): string | undefined {
  const meant = [0.1, 0.01]
    .map((step) => Number((value * step).toPrecision(12)))
    .find((it) => it >= min && it <= max)
  return meant === undefined ? undefined : String(meant)
}

function fault(detail: string, suggestion?: string): CellRead {
  return { kind: 'fault', detail, ...(suggestion === undefined ? {} : { suggestion }) }
}
