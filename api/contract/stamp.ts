import { column } from './columns.ts'
import { id } from './quantity.ts'
import { measuredRecord } from './record-schemas.ts'
import { z } from './schema.ts'

export const stampKinds = [
  'in',
  'lid on',
  'steam seen',
  'lid opened',
  'out',
  'cooled',
  'added',
  'deviation',
  'lost',
  'note',
] as const

const enteredAmount = z
  .object({
    amount: z.union([z.number(), z.string().trim().max(60)]),
    unit: z.string().trim().max(60),
    strengthPercent: z.number().min(0).max(100).optional(),
  })
  .nullish()
  .transform((value) => value ?? null)

/** One event at the stove with its time, and what was added. Acid in doses is several `added`. */
export const stamp = measuredRecord('Stamp', {
  sessionId: { sent: id, shown: id, kept: 'plain' },
  vesselId: column.maybeReference(),
  skeinId: column.maybeReference(),
  kind: column.choice(stampKinds),
  at: { sent: z.iso.datetime({ offset: true }), shown: z.string(), kept: 'moment' },
  what: column.text(),
  entered: {
    sent: enteredAmount,
    shown: z
      .object({
        amount: z.union([z.number(), z.string()]),
        unit: z.string(),
        strengthPercent: z.number().optional(),
      })
      .nullable(),
    kept: 'json',
  },
  stockId: column.maybeReference(),
  grams: column.maybeNumber({ min: 0, max: 20_000 }),
  ml: column.maybeNumber({ min: 0, max: 500_000 }),
})
export type NewStamp = z.infer<typeof stamp.sent>
