import { id, maybeDay, maybeDecimal, maybeText, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'

export const sessionKinds = ['stove', 'bench', 'wash', 'contact', 'rub', 'light', 'remedy'] as const

/** Values of the variables by key; checked against their bounds where they are written. */
export const sentConditions = z.record(z.string().min(1).max(200), z.unknown())
export const shownConditions = z.record(z.string(), z.unknown())

const fields = {
  heldOn: maybeDay,
  label: shortText,
  place: maybeText,
  altitudeM: maybeDecimal({ min: -450, max: 5500 }),
  waterAlkalinityMgL: maybeDecimal({ min: 0, max: 1500 }),
  note: maybeText,
}

export const NewSession = z
  .object({
    id: id.optional(),
    kind: z.enum(sessionKinds).default('stove'),
    ...fields,
    conditions: sentConditions.default({}),
  })
  .openapi('NewSession')
export type NewSession = z.infer<typeof NewSession>

export const ChangedSession = z
  .object({ kind: z.enum(sessionKinds), ...fields, conditions: sentConditions })
  .partial()
  .openapi('ChangedSession')

/** One occasion that holds all or many treatments. Without a trial it is shared: a wash day, a window. */
export const Session = z
  .object({
    ...stored,
    trialId: id.nullable(),
    kind: z.enum(sessionKinds),
    heldOn: z.string().nullable(),
    label: z.string(),
    place: z.string().nullable(),
    altitudeM: z.number().nullable(),
    waterAlkalinityMgL: z.number().nullable(),
    conditions: shownConditions,
    note: z.string().nullable(),
  })
  .openapi('Session')
export type Session = z.infer<typeof Session>
