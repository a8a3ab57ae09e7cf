import { corrected, correcting } from './one-or-many.ts'
import { id, maybeDecimal, maybeMoment, stored } from './quantity.ts'
import { z } from './schema.ts'
import { sentConditions, shownConditions } from './session.ts'

export const protocols = [
  'W1',
  'W2',
  'W3',
  'W4',
  'W5',
  'W6',
  'X0',
  'X1',
  'X2',
  'X3',
  'X4',
  'rub dry',
  'rub wet',
] as const

export const NewExposure = z
  .object({
    id: id.optional(),
    protocol: z.enum(protocols),
    cycles: maybeDecimal({ min: 0, max: 200, whole: true }),
    strokes: maybeDecimal({ min: 1, max: 10_000, whole: true }),
    startedAt: maybeMoment,
    endedAt: maybeMoment,
    doseMlxh: maybeDecimal({ min: 0, max: 1000 }),
    due: z.array(z.iso.date()).max(200).default([]),
    conditions: sentConditions.default({}),
    ...correcting,
  })
  .openapi('NewExposure')
export type NewExposure = z.infer<typeof NewExposure>

/** One wash, wet contact, rub or light exposure of a vessel. */
export const Exposure = z
  .object({
    ...stored,
    vesselId: id,
    protocol: z.enum(protocols),
    cycles: z.number().nullable(),
    strokes: z.number().nullable(),
    startedAt: z.string().nullable(),
    endedAt: z.string().nullable(),
    doseMlxh: z.number().nullable(),
    due: z.array(z.string()),
    conditions: shownConditions,
    ...corrected,
  })
  .openapi('Exposure')
export type Exposure = z.infer<typeof Exposure>
