import { corrected, correcting } from './one-or-many.ts'
import { id, maybeDecimal, maybeId, maybeText, stored } from './quantity.ts'
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

const entered = z
  .object({
    amount: z.union([z.number(), z.string().trim().max(60)]),
    unit: z.string().trim().max(60),
    strengthPercent: z.number().min(0).max(100).optional(),
  })
  .nullish()
  .transform((value) => value ?? null)

export const NewStamp = z
  .object({
    id: id.optional(),
    sessionId: id,
    vesselId: maybeId,
    skeinId: maybeId,
    kind: z.enum(stampKinds),
    at: z.iso.datetime({ offset: true }),
    what: maybeText,
    entered,
    stockId: maybeId,
    grams: maybeDecimal({ min: 0, max: 20_000 }),
    ml: maybeDecimal({ min: 0, max: 500_000 }),
    ...correcting,
  })
  .openapi('NewStamp')
export type NewStamp = z.infer<typeof NewStamp>

/** One event at the stove with its time, and what was added. Acid in doses is several `added`. */
export const Stamp = z
  .object({
    ...stored,
    sessionId: id,
    vesselId: id.nullable(),
    skeinId: id.nullable(),
    kind: z.enum(stampKinds),
    at: z.string(),
    what: z.string().nullable(),
    entered: z
      .object({
        amount: z.union([z.number(), z.string()]),
        unit: z.string(),
        strengthPercent: z.number().optional(),
      })
      .nullable(),
    stockId: id.nullable(),
    grams: z.number().nullable(),
    ml: z.number().nullable(),
    ...corrected,
  })
  .openapi('Stamp')
export type Stamp = z.infer<typeof Stamp>
