import { type Grams, grams, type Millilitres, millilitres } from '#api/science/units.ts'
import { kitchenUnitCalled, unitFault } from './kitchen-unit-called.ts'
import type { KitchenUnit } from './kitchen-units.ts'

/**
 * A volume in any unit of the kitchen, in millilitres.
 *
 * @throws RangeError when the unit is not one volume: unknown, ambiguous, or a weight.
 *
 * @example
 * toMillilitres(0.25, 'cup (US)') // 59.147059125
 */
export function toMillilitres(amount: number, unit: string): Millilitres {
  return millilitres(amount * sizeOf(unit, 'volume'))
}

/**
 * A weight in any unit of the kitchen, in grams.
 *
 * @throws RangeError when the unit is not a weight.
 *
 * @example
 * toGrams(4, 'oz') // 113.3980925
 */
export function toGrams(amount: number, unit: string): Grams {
  return grams(amount * sizeOf(unit, 'mass'))
}

function sizeOf(unit: string, kind: KitchenUnit['kind']): number {
  const called = kitchenUnitCalled(unit)
  if (called.kind === 'unit' && called.unit.kind === kind) return called.unit.size
  throw new RangeError(unitFault(unit, kind))
}
