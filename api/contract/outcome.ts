import { column } from './columns.ts'
import { decimal } from './quantity.ts'
import { measuredRecord } from './record-schemas.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

/** Any graded or measured result of a skein or of a vessel that is not a colour reading. */
export const outcome = measuredRecord('Outcome', {
  kind: { sent: z.string().trim().min(1).max(60), shown: z.string(), kept: 'plain' },
  skeinId: column.maybeReference(),
  vesselId: column.maybeReference(),
  /** A number; a grade may be sent as its text alone, “3-4”. */
  value: { sent: decimal({ min: -1e9, max: 1e9 }).optional(), shown: z.number(), kept: 'plain' },
  // These stand together in one unique index, whose rows have a limit of bytes.
  text: column.shortText(100),
  unit: column.shortText(60),
  fibre: column.shortText(60),
  companionId: column.maybeReference(),
  /** Left out it is worked out where the kind needs it. */
  wear: { sent: wear.optional(), shown: z.record(z.string(), z.number()), kept: 'json' },
  sittingId: column.maybeReference(),
  grader: column.shortText(60),
  blindCode: column.shortText(60),
  takenAt: column.moment(),
})
export type NewOutcome = z.infer<typeof outcome.sent>
