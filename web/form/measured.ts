import { doubtOf, refusal, type VariableKey } from '#api/contract/bounds.ts'
import { convert } from '#api/science/recipe/convert.ts'
import { kitchenUnitCalled, unitFault } from '#api/science/recipe/kitchen-unit-called.ts'
import { readAmount } from '#api/science/recipe/read-amount.ts'
import { figure, withUnit } from '#web/form/number-words.ts'

/** What a person typed, read as a number of the unit that is kept. */
export type Measured = {
  readonly typed: string
  readonly unit: string
  /** In the unit that is kept; undefined when blank, unreadable or at fault. Blank is not recorded, never zero. */
  readonly value: number | undefined
  /** The line below the box: “counts as 59.1 mL; kept as ¼ cup (US)”. */
  readonly countsAs: string | undefined
  readonly fault: { readonly detail: string; readonly suggestion?: number } | undefined
  readonly doubt: string | undefined
}

/**
 * Reads an amount as it is typed and says at once what it counts as, and what is impossible or doubtful about it.
 *
 * @param keptAs The unit that is kept and worked with.
 * @param variable Its row in the table of variables, if it has one: the source of fault and doubt.
 * @param least For what has no row: the least that is possible.
 *
 * @example
 * measured('¼', 'cup (US)', { keptAs: 'mL' }).value // 59.147
 * @example
 * measured('10,2', 'L', { keptAs: 'L' }).countsAs // 'read as 10.2 L'
 */
export function measured(
  typed: string,
  unit: string,
  {
    keptAs,
    variable,
    least,
  }: { keptAs: string; variable?: VariableKey | undefined; least?: number | undefined },
): Measured {
  const read = readAmount(typed)
  const nothing = { typed, unit, value: undefined, countsAs: undefined, fault: undefined, doubt: undefined }
  if (read.kind === 'blank') return nothing
  if (read.kind === 'unreadable') return { ...nothing, fault: { detail: read.because } }

  const givenUnit = read.unit === undefined ? unit : unitMeant(read.unit, unit)
  const value = givenUnit === '' && keptAs === '' ? read.amount : convert(read.amount, givenUnit, keptAs)
  if (value === undefined)
    return { ...nothing, fault: { detail: ambiguity(givenUnit) ?? notTurned(typed, read.unit, keptAs) } }

  const fault = variable === undefined ? tooLittle(value, least) : refusal(variable, value)
  return {
    typed,
    unit: givenUnit,
    value: fault === undefined ? value : undefined,
    countsAs: countsAs(withoutUnit(typed, read.unit), givenUnit, value, keptAs),
    fault,
    doubt: variable === undefined || fault !== undefined ? undefined : doubtOf(variable, value),
  }
}

function countsAs(typed: string, unit: string, value: number, keptAs: string): string | undefined {
  const said = withUnit(inFigures(value), keptAs).replace('\u00a0', ' ')
  if (unit !== keptAs) return `counts as ${said}; kept as ${typed.trim()} ${unit}`
  return /,|\//.test(typed) || Number.isNaN(Number(typed)) ? `read as ${said}` : undefined
}

function tooLittle(value: number, least: number | undefined): Measured['fault'] {
  return least === undefined || value >= least ? undefined : { detail: `This is ${least} or more.` }
}

function withoutUnit(typed: string, unit = ''): string {
  return typed.trim().slice(0, typed.trim().length - unit.length)
}

/** A bare “tbsp” behind the number is the one that is chosen beside it, if one is. */
function unitMeant(typed: string, chosen: string): string {
  const called = kitchenUnitCalled(typed)
  if (called.kind === 'several' && called.units.some(({ name }) => name === chosen)) return chosen
  return called.kind === 'unit' ? called.unit.name : typed
}

/** “There is more than one cup. Write …” */
function ambiguity(unit: string): string | undefined {
  return kitchenUnitCalled(unit).kind === 'several' ? unitFault(unit, 'volume') : undefined
}

function notTurned(typed: string, unit: string | undefined, keptAs: string): string {
  if (keptAs === '' && unit !== undefined) return `This is a bare number, without ${unit.slice(0, 40)}.`
  return `${typed.trim().slice(0, 40)} cannot be turned into ${keptAs}.`
}

/**
 * Three or four figures: enough to measure by, and to see that a number was read rightly.
 *
 * @example
 * [inFigures(340.194), inFigures(3.4019), inFigures(0.0049)] // ['340', '3.4', '0.0049']
 */
export function inFigures(value: number): string {
  const size = Math.abs(value)
  if (size === 0) return '0'
  const decimals = Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(size))))
  return figure(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')
}
