import { column } from './columns.ts'
import { decimal, id } from './quantity.ts'
import { measuredRecord } from './record-schemas.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

export const bases = ['own', 'covered', 'twin', 'standard', 'companion'] as const

const NewSpot = z.object({
  place: decimal({ min: 1, max: 50, whole: true }).optional(),
  l: decimal({ min: 0, max: 100 }),
  a: decimal({ min: -128, max: 127 }),
  b: decimal({ min: -128, max: 127 }),
})
const Spot = z.object({ place: z.number().optional(), l: z.number(), a: z.number(), b: z.number() })

/** One visit to one skein in a sitting: 1–50 spots, and what is worked out from them. */
export const reading = measuredRecord('Reading', {
  skeinId: column.reference(),
  sittingId: column.reference(),
  placing: {
    sent: decimal({ min: 1, max: 1000, whole: true }).default(1),
    shown: z.number().int(),
    kept: 'plain',
  },
  /** Left out it is worked out from the exposures of the skein's vessels. */
  wear: { sent: wear.optional(), shown: z.record(z.string(), z.number()), kept: 'json' },
  wearFrom: column.ours(z.enum(['exposures', 'entered']), 'plain'),
  wet: column.flag(),
  restedH: column.maybeNumber({ min: 0, max: 10_000 }),
  spots: { sent: z.array(NewSpot).min(1).max(50), shown: z.array(Spot), kept: 'json' },
  blindCode: column.shortText(60),
  takenAt: column.moment(),
  meanL: column.ours(z.number(), 'plain'),
  meanA: column.ours(z.number(), 'plain'),
  meanB: column.ours(z.number(), 'plain'),
  spotsN: column.ours(z.number().int(), 'plain'),
  /** Mean ΔE00 of the places from their mean; null for one place. */
  mcdm: column.ours(z.number().nullable(), 'plain'),
  /** The largest ΔE00 between two places; null for one place. */
  spread: column.ours(z.number().nullable(), 'plain'),
  /** A value stands at the end of its range, so that the truth may lie beyond. */
  clipped: column.ours(z.boolean(), 'plain'),
})
export type NewReading = z.infer<typeof reading.sent>
export type Reading = z.infer<typeof reading.shown>

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
export const ReadingWithChanges = reading.shown
  .extend({
    changes: z.array(Change),
    notCompared: z.array(z.object({ basis: z.enum(bases), reason: z.string() })),
  })
  .openapi('ReadingWithChanges')
