import { id, maybeDecimal, maybeText, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'

export const dyeClasses = [
  'levelling',
  'fast acid',
  'milling',
  'super-milling',
  'food-grade',
  'unknown',
] as const
export const dyeForms = ['powder', 'liquid', 'gel'] as const

const fields = {
  name: shortText,
  batch: maybeText,
  gramsPerTeaspoon: maybeDecimal({ moreThan: 0, max: 50 }),
}

export const NewDye = z
  .object({
    id: id.optional(),
    ...fields,
    class: z.enum(dyeClasses).default('unknown'),
    form: z.enum(dyeForms).default('powder'),
  })
  .openapi('NewDye')

export const ChangedDye = z
  .object({ ...fields, class: z.enum(dyeClasses), form: z.enum(dyeForms) })
  .partial()
  .openapi('ChangedDye')

/** A dye as it was bought, in the dyer's own words. */
export const Dye = z
  .object({
    ...stored,
    name: z.string(),
    class: z.enum(dyeClasses),
    form: z.enum(dyeForms),
    batch: z.string().nullable(),
    gramsPerTeaspoon: z.number().nullable(),
  })
  .openapi('Dye')
export type Dye = z.infer<typeof Dye>
