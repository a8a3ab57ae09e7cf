import { Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { unitFault } from '#api/science/recipe/kitchen-unit-called.ts'
import type { KitchenUnit } from '#api/science/recipe/kitchen-units.ts'
import { toGrams, toMillilitres } from '#api/science/recipe/to-millilitres.ts'
import type { Grams, Millilitres } from '#api/science/units.ts'

/** An amount as it is entered: `{ amount: 0.25, unit: "cup (US)" }`. Units: `api/science/recipe/kitchen-units.ts`. */
export const measured = z.object({
  amount: z.number().min(0),
  unit: z.string().min(1).max(60).openapi({ example: 'cup (US)' }),
})
export type Measured = z.output<typeof measured>

/** A volume in mL; a unit that is none is refused at its place in the body. */
export function volumeOf({ amount, unit }: Measured, path: readonly PropertyKey[]): Millilitres {
  refuseUnit(unit, 'volume', path)
  return toMillilitres(amount, unit)
}

/** A weight in g; a unit that is none is refused at its place in the body. */
export function weightOf({ amount, unit }: Measured, path: readonly PropertyKey[]): Grams {
  refuseUnit(unit, 'mass', path)
  return toGrams(amount, unit)
}

function refuseUnit(unit: string, kind: KitchenUnit['kind'], path: readonly PropertyKey[]): void {
  const detail = unitFault(unit, kind)
  if (detail) refuseAt([...path, 'unit'], detail)
}

/** Refuses one place of a body, for what no schema can see. */
export function refuseAt(path: readonly PropertyKey[], detail: string): never {
  throw new Problem('at-fault', 'This cannot be worked out as it is.', [{ pointer: pointerTo(path), detail }])
}
