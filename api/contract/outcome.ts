import { corrected, correcting } from './one-or-many.ts'
import { decimal, id, maybeId, maybeMoment, stored } from './quantity.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

// They stand together in one unique index, whose rows have a limit of bytes.
const maybeShort = (most: number) =>
  z
    .string()
    .trim()
    .max(most)
    .nullish()
    .transform((text) => text || null)

/** `value` is a number; a grade may be sent as its text, “3-4”. `wear` left out is worked out where the kind needs it. */
export const NewOutcome = z
  .object({
    id: id.optional(),
    kind: z.string().trim().min(1).max(60),
    skeinId: maybeId,
    vesselId: maybeId,
    value: decimal({ min: -1e9, max: 1e9 }).optional(),
    text: maybeShort(100),
    unit: maybeShort(60),
    fibre: maybeShort(60),
    companionId: maybeId,
    wear: wear.optional(),
    sittingId: maybeId,
    grader: maybeShort(60),
    blindCode: maybeShort(60),
    takenAt: maybeMoment,
    ...correcting,
  })
  .openapi('NewOutcome')
export type NewOutcome = z.infer<typeof NewOutcome>

/** Any graded or measured result of a skein or of a vessel that is not a colour reading. */
export const Outcome = z
  .object({
    ...stored,
    kind: z.string(),
    skeinId: id.nullable(),
    vesselId: id.nullable(),
    value: z.number(),
    text: z.string().nullable(),
    unit: z.string().nullable(),
    fibre: z.string().nullable(),
    companionId: id.nullable(),
    wear: z.record(z.string(), z.number()),
    sittingId: id.nullable(),
    grader: z.string().nullable(),
    blindCode: z.string().nullable(),
    takenAt: z.string().nullable(),
    ...corrected,
  })
  .openapi('Outcome')
export type Outcome = z.infer<typeof Outcome>
