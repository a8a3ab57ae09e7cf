import { column } from './columns.ts'
import { decimal } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import { z } from './schema.ts'

const composition = z
  .array(z.object({ fibre: z.string().trim().min(1).max(60), percent: decimal({ moreThan: 0, max: 100 }) }))
  .max(20)

/** An undyed yarn. */
export const base = plainRecord('Base', {
  name: column.name(),
  makerLot: column.text(),
  composition: {
    sent: composition.default([]),
    changed: composition,
    shown: z.array(z.object({ fibre: z.string(), percent: z.number() })),
    kept: 'json',
  },
  /** The share that takes acid dye, from the composition. */
  dyeablePercent: column.ours(z.number().nullable(), 'plain'),
  superwash: column.choiceOr(['yes', 'no', 'unknown'], 'unknown'),
  naturalL: column.maybeNumber({ min: 0, max: 100 }),
  naturalA: column.maybeNumber({ min: -128, max: 127 }),
  naturalB: column.maybeNumber({ min: -128, max: 127 }),
})
