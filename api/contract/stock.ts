import { column } from './columns.ts'
import { decimal, id } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import { z } from './schema.ts'

const parts = z
  .array(z.object({ dyeId: id, grams: decimal({ moreThan: 0, max: 500 }) }))
  .min(1)
  .max(20)

/** A dye solution. */
export const stock = plainRecord('Stock', {
  label: column.name(),
  parts: {
    sent: parts,
    changed: parts,
    shown: z.array(z.object({ dyeId: id, grams: z.number() })),
    kept: 'json',
  },
  madeToMl: column.number({ moreThan: 0, max: 20_000 }),
  /** Grams of dye made up to 100 mL. */
  strengthPercent: column.ours(z.number().nullable(), 'plain'),
  madeOn: column.day(),
})
