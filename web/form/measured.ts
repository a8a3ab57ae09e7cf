import { doubtOf, refusal, type VariableKey } from '#api/contract/bounds.ts'
import { convert } from '#api/science/recipe/convert.ts'
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
 *
 * @example
 * measured('¼', 'cup (US)', { keptAs: 'mL' }).value // 59.147
 * @example
 * measured('10,2', 'L', { keptAs: 'L' }).countsAs // 'read as 10.2 L'
 */
export function measured(
  typed: string,
  unit: string,
  { keptAs, variable }: { keptAs: string; variable?: VariableKey | undefined },
): Measured {
  const read = readAmount(typed)
  const nothing = { typed, unit, value: undefined, countsAs: undefined, fault: undefined, doubt: undefined }
  if (read.kind === 'blank') return nothing
  if (read.kind === 'unreadable') return { ...nothing, fault: { detail: read.because } }

  const givenUnit = read.unit ?? unit
  const value = unit === '' && keptAs === '' ? read.amount : convert(read.amount, givenUnit, keptAs)
  if (value === undefined)
    return { ...nothing, fault: { detail: `${withUnit(typed.trim(), '')} cannot be turned into ${keptAs}.` } }

  const fault = variable === undefined ? undefined : refusal(variable, value)
  return {
    typed,
    unit: givenUnit,
    value: fault === undefined ? value : undefined,
    countsAs: countsAs(typed, givenUnit, value, keptAs),
    fault,
    doubt: variable === undefined || fault !== undefined ? undefined : doubtOf(variable, value),
  }
}

function countsAs(typed: string, unit: string, value: number, keptAs: string): string | undefined {
  const said = withUnit(inFigures(value), keptAs).replace('\u00a0', ' ')
  if (unit !== keptAs) return `counts as ${said}; kept as ${typed.trim()} ${unit}`
  return /,|\//.test(typed) || Number.isNaN(Number(typed)) ? `read as ${said}` : undefined
}

/** Three or four figures are enough to see that it was read rightly. */
function inFigures(value: number): string {
  const size = Math.abs(value)
  if (size === 0) return '0'
  const decimals = Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(size))))
  return figure(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')
}
