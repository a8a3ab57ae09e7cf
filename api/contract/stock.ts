import { decimal, id, maybeDay, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'

const fields = {
  label: shortText,
  parts: z
    .array(z.object({ dyeId: id, grams: decimal({ moreThan: 0, max: 500 }) }))
    .min(1)
    .max(20),
  madeToMl: decimal({ moreThan: 0, max: 20_000 }),
  madeOn: maybeDay,
}

export const NewStock = z.object({ id: id.optional(), ...fields }).openapi('NewStock')
export const ChangedStock = z.object(fields).partial().openapi('ChangedStock')

/** A dye solution; `strengthPercent` is grams of dye made up to 100 mL. */
export const Stock = z
  .object({
    ...stored,
    label: z.string(),
    parts: z.array(z.object({ dyeId: id, grams: z.number() })),
    madeToMl: z.number(),
    strengthPercent: z.number().nullable(),
    madeOn: z.string().nullable(),
  })
  .openapi('Stock')
export type Stock = z.infer<typeof Stock>
