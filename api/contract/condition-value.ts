import { convert, kindOfUnit } from '#api/science/recipe/convert.ts'
import { kitchenUnitCalled, unitFault } from '#api/science/recipe/kitchen-unit-called.ts'
import { readAmount } from '#api/science/recipe/read-amount.ts'
import { bounds, isVariable, refusal, refusalOf, type VariableKey } from './bounds.ts'

/** An amount as somebody entered it. `strengthPercent` is that of vinegar (g in 100 mL) or of a diluted powder. */
export type Entered = {
  readonly amount: number | string
  readonly unit: string
  readonly strengthPercent?: number | undefined
}

/** What was entered, kept beside what it counts as in the unit of the table of variables. */
export type EnteredValue = { readonly entered: Entered; readonly value: number }

/** A factor's own key may hold text or yes and no; null means “not recorded here”. */
export type ConditionValue = number | string | boolean | null | EnteredValue
export type Conditions = { readonly [key: string]: ConditionValue }

/**
 * The number of a variable, in the unit of the table, or undefined where it is not recorded.
 *
 * @example
 * numberOf({ steamTime: { entered: { amount: '1/2', unit: 'h' }, value: 30 } }, 'steamTime') // 30
 */
export function numberOf(conditions: Conditions, key: VariableKey): number | undefined {
  const held = Object.hasOwn(conditions, key) ? conditions[key] : undefined
  if (typeof held === 'number') return held
  return typeof held === 'object' && held !== null ? held.value : undefined
}

export type CountsAs =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'blank' }
  | { readonly kind: 'fault'; readonly at: 'amount' | 'unit' | 'strengthPercent'; readonly detail: string }

/** What else of the same conditions a conversion may need. */
export type Beside = { readonly fibreMass?: number | undefined; readonly acidStrength?: number | undefined }

const countingWords = /^(drops?|times|strokes?|cycles?|rinses?|openings?|readings?|steps?|)$/i

/**
 * What an entered amount counts as, in the unit of the table of variables.
 *
 * A plain weight or volume for something that is counted on the fibre (¼ cup of vinegar) is taken on the fibre
 * weight that stands beside it. Vinegar of another strength counts as vinegar of 5 %.
 *
 * @example
 * countsAs('acid', { amount: '¼', unit: 'cup (US)' }, { fibreMass: 100 }) // { kind: 'value', value: 59.147 }
 */
export function countsAs(key: VariableKey, entered: Entered, beside: Beside = {}): CountsAs {
  const read = readAmount(entered.amount)
  if (read.kind === 'blank') return { kind: 'blank' }
  if (read.kind === 'unreadable') return { kind: 'fault', at: 'amount', detail: read.because }
  if (read.unit !== undefined)
    return { kind: 'fault', at: 'amount', detail: `Write the number alone; its unit is ${entered.unit}.` }
  const inUnit = inTableUnit(key, read.amount, entered.unit, beside.fibreMass)
  if (inUnit === undefined) return { kind: 'fault', at: 'unit', detail: unitAtFault(key, entered.unit) }
  const share = shareOfStrength(key, entered.strengthPercent, beside.acidStrength)
  if (typeof share === 'string') return { kind: 'fault', at: 'strengthPercent', detail: share }
  const value = inUnit * share
  const refused = refusal(key, value)
  return refused ? { kind: 'fault', at: 'amount', detail: refused.detail } : { kind: 'value', value }
}

function inTableUnit(key: VariableKey, amount: number, unit: string, fibre?: number): number | undefined {
  const wanted = bounds[key].unit
  if (wanted === '') return countingWords.test(unit.trim()) ? amount : undefined
  const plain = convert(amount, unit, wanted)
  if (plain !== undefined || fibre === undefined || !(fibre > 0)) return plain
  return convert(amount / fibre, `${unit.trim()} per g`, wanted)
}

function shareOfStrength(key: VariableKey, strength?: number, acidStrength?: number): number | string {
  if (key === 'acid') {
    const percent = strength ?? acidStrength ?? 5
    return refusalOf('acidStrength', percent) ?? percent / 5
  }
  if (strength === undefined) return 1
  if (key !== 'citric' && key !== 'depth' && key !== 'dyeMass')
    return `${bounds[key].label} has no strength; leave this out.`
  return strength > 0 && strength <= 100 ? strength / 100 : 'A strength is more than 0 % and at most 100 %.'
}

function unitAtFault(key: VariableKey, unit: string): string {
  const { label, unit: wanted } = bounds[key]
  if (wanted === '') return `${label} has no unit; leave it blank.`
  const called = kitchenUnitCalled(unit)
  if (called.kind === 'several') return unitFault(unit, 'volume') ?? ''
  const kind = kindOfUnit(unit.trim())
  if (kind !== undefined && kindOfUnit(wanted) === `${kind}/mass`)
    return `${label} is counted on the fibre, in ${wanted}. Give the fibre weight beside it, or write “${unit.trim()} per 100 g”.`
  return `${label} is kept in ${wanted}; “${unit.slice(0, 40)}” cannot be counted in it.`
}

/**
 * Whether conditions may hold a key: a variable of the table, `pressureVessel`, or one of the trial's own factors.
 *
 * @example
 * [mayHold('hold', []), mayHold('moon', []), mayHold('moon', ['moon'])] // [true, false, true]
 */
export function mayHold(key: string, extraKeys: readonly string[]): boolean {
  return isVariable(key) || key === 'pressureVessel' || extraKeys.includes(key)
}
