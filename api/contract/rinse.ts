import { corrected, correcting } from './one-or-many.ts'
import { decimal, id, maybeDecimal, maybeId, stored } from './quantity.ts'
import { z } from './schema.ts'

export const NewRinse = z
  .object({
    id: id.optional(),
    skeinId: maybeId,
    vesselId: maybeId,
    number: decimal({ min: 1, max: 40, whole: true }),
    mlPerG: maybeDecimal({ moreThan: 0, max: 500 }),
    temperatureC: maybeDecimal({ min: 0, max: 95 }),
    minutes: maybeDecimal({ min: 0, max: 1440 }),
    clarity: maybeDecimal({ min: 1, max: 5, step: 0.5 }),
    detergentGL: maybeDecimal({ min: 0, max: 50 }),
    ...correcting,
  })
  .openapi('NewRinse')
export type NewRinse = z.infer<typeof NewRinse>

/** One change of water of a skein or of a vessel, with how clear it came out (5 clear, 1 strong). */
export const Rinse = z
  .object({
    ...stored,
    skeinId: id.nullable(),
    vesselId: id.nullable(),
    number: z.number().int(),
    mlPerG: z.number().nullable(),
    temperatureC: z.number().nullable(),
    minutes: z.number().nullable(),
    clarity: z.number().nullable(),
    detergentGL: z.number().nullable(),
    ...corrected,
  })
  .openapi('Rinse')
export type Rinse = z.infer<typeof Rinse>
