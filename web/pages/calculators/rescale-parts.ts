import { convert, kindOfUnit } from '#api/science/recipe/convert.ts'
import type { RecipeLine } from '#api/science/recipe/rescale.ts'
import type { FieldFault } from '#web/form/field-notes.tsx'
import { measured } from '#web/form/measured.ts'

/** One ingredient as it is typed. */
export type Part = {
  readonly id: number
  readonly name: string
  readonly amount: string
  readonly unit: string
}

export function blankPart(id: number): Part {
  return { id, name: '', amount: '', unit: 'g' }
}

/**
 * The ingredients of a recipe for a weight of yarn, per 100 g of it; those without an amount are left out.
 *
 * @param fibre In g, more than 0.
 *
 * @example
 * recipeOf([{ id: 0, name: 'Teal', amount: '1,5', unit: 'g' }, { id: 1, name: '', amount: '', unit: 'g' }], 50) // [{ name: 'Teal', per100g: 3, measure: 'g' }]
 */
export function recipeOf(parts: readonly Part[], fibre: number): RecipeLine[] {
  return parts.flatMap((part, place) => {
    const amount = amountOf(part)
    if (amount === undefined) return []
    const name = part.name.trim() === '' ? `ingredient ${place + 1}` : part.name.trim()
    return [{ name, per100g: (100 * amount.value) / fibre, measure: amount.measure }]
  })
}

/** What is wrong with the amount of an ingredient. */
export function partFault(part: Part): FieldFault[] {
  const { fault, value } = measured(part.amount, part.unit, { keptAs: part.unit })
  if (fault !== undefined) return [{ detail: fault.detail }]
  return value !== undefined && value < 0 ? [{ detail: 'An amount is 0 or more.' }] : []
}

function amountOf(part: Part): { value: number; measure: 'g' | 'mL' } | undefined {
  const { value } = measured(part.amount, part.unit, { keptAs: part.unit })
  if (value === undefined || value < 0) return undefined
  const measure = kindOfUnit(part.unit) === 'mass' ? 'g' : 'mL'
  const kept = convert(value, part.unit, measure)
  return kept === undefined ? undefined : { value: kept, measure }
}
