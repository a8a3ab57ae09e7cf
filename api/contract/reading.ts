import { corrected, correcting } from './one-or-many.ts'
import { decimal, id, maybeDecimal, maybeMoment, stored } from './quantity.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

export const bases = ['own', 'covered', 'twin', 'standard', 'companion'] as const

const NewSpot = z.object({
  place: decimal({ min: 1, max: 50, whole: true }).optional(),
  l: decimal({ min: 0, max: 100 }),
  a: decimal({ min: -128, max: 127 }),
  b: decimal({ min: -128, max: 127 }),
})

/** `wear` left out is worked out from the exposures of the skein's vessels. */
export const NewReading = z
  .object({
    id: id.optional(),
    skeinId: id,
    sittingId: id,
    placing: decimal({ min: 1, max: 1000, whole: true }).default(1),
    wear: wear.optional(),
    wet: z.boolean().default(false),
    restedH: maybeDecimal({ min: 0, max: 10_000 }),
    spots: z.array(NewSpot).min(1).max(50),
    blindCode: z
      .string()
      .trim()
      .max(60)
      .nullish()
      .transform((code) => code || null),
    takenAt: maybeMoment,
    ...correcting,
  })
  .openapi('NewReading')
export type NewReading = z.infer<typeof NewReading>

const Spot = z.object({ place: z.number().optional(), l: z.number(), a: z.number(), b: z.number() })

/** One visit to one skein in a sitting: 1–50 spots, and what is worked out from them. */
export const Reading = z
  .object({
    ...stored,
    skeinId: id,
    sittingId: id,
    placing: z.number().int(),
    wear: z.record(z.string(), z.number()),
    wearFrom: z.enum(['exposures', 'entered']),
    wet: z.boolean(),
    restedH: z.number().nullable(),
    spots: z.array(Spot),
    blindCode: z.string().nullable(),
    takenAt: z.string().nullable(),
    meanL: z.number(),
    meanA: z.number(),
    meanB: z.number(),
    spotsN: z.number().int(),
    /** Mean ΔE00 of the places from their mean; null for one place. */
    mcdm: z.number().nullable(),
    /** The largest ΔE00 between two places; null for one place. */
    spread: z.number().nullable(),
    /** A value stands at the end of its range, so that the truth may lie beyond. */
    clipped: z.boolean(),
    ...corrected,
  })
  .openapi('Reading')
export type Reading = z.infer<typeof Reading>

/** A reading against what it is compared with. */
export const Change = z
  .object({
    readingId: id,
    againstIds: z.array(id),
    basis: z.enum(bases),
    dL: z.number(),
    dA: z.number(),
    dB: z.number(),
    dC: z.number(),
    dH: z.number(),
    de76: z.number(),
    de00: z.number(),
    deF: z.number(),
    grade: z.string(),
  })
  .openapi('Change')
export type Change = z.infer<typeof Change>

/** One reading with its changes, and why a comparison that one would expect was not made. */
export const ReadingWithChanges = Reading.extend({
  changes: z.array(Change),
  notCompared: z.array(z.object({ basis: z.enum(bases), reason: z.string() })),
}).openapi('ReadingWithChanges')
