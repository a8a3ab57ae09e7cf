import { decimal, id, maybeDecimal, maybeText, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'

const composition = z
  .array(z.object({ fibre: z.string().trim().min(1).max(60), percent: decimal({ moreThan: 0, max: 100 }) }))
  .max(20)
const superwash = z.enum(['yes', 'no', 'unknown'])

const fields = {
  name: shortText,
  makerLot: maybeText,
  naturalL: maybeDecimal({ min: 0, max: 100 }),
  naturalA: maybeDecimal({ min: -128, max: 127 }),
  naturalB: maybeDecimal({ min: -128, max: 127 }),
}

export const NewBase = z
  .object({
    id: id.optional(),
    ...fields,
    composition: composition.default([]),
    superwash: superwash.default('unknown'),
  })
  .openapi('NewBase')

export const ChangedBase = z
  .object({ ...fields, composition, superwash })
  .partial()
  .openapi('ChangedBase')

/** An undyed yarn. `dyeablePercent` is the share that takes acid dye, from its composition. */
export const Base = z
  .object({
    ...stored,
    name: z.string(),
    makerLot: z.string().nullable(),
    composition: z.array(z.object({ fibre: z.string(), percent: z.number() })),
    dyeablePercent: z.number().nullable(),
    superwash,
    naturalL: z.number().nullable(),
    naturalA: z.number().nullable(),
    naturalB: z.number().nullable(),
  })
  .openapi('Base')
export type Base = z.infer<typeof Base>
