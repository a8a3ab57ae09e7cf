import { id, maybeDecimal, maybeId, maybeText, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'
import { sentConditions, shownConditions } from './session.ts'
import { stages } from './trial.ts'

export const vesselKinds = ['pot', 'jar', 'packet', 'tray', 'bowl', 'card'] as const
export const statuses = ['planned', 'done', 'lost'] as const

const fields = {
  stage: z.enum(stages),
  kind: z.enum(vesselKinds),
  label: shortText,
  equipment: maybeText,
  place: maybeText,
  drawnOrder: maybeDecimal({ min: 0, max: 100_000, whole: true }),
  recipeId: maybeId,
  lostReason: maybeText,
}

export const NewVessel = z
  .object({
    id: id.optional(),
    ...fields,
    conditions: sentConditions.default({}),
    assumed: z.boolean().default(false),
    status: z.enum(statuses).default('planned'),
  })
  .openapi('NewVessel')
export type NewVessel = z.infer<typeof NewVessel>

export const ChangedVessel = z
  .object({ ...fields, conditions: sentConditions, assumed: z.boolean(), status: z.enum(statuses) })
  .partial()
  .openapi('ChangedVessel')

/** One filling of a pot, jar, packet, tray, bowl, wash jar or light card, at one stage of a session. */
export const Vessel = z
  .object({
    ...stored,
    sessionId: id,
    stage: z.enum(stages),
    kind: z.enum(vesselKinds),
    label: z.string(),
    equipment: z.string().nullable(),
    place: z.string().nullable(),
    drawnOrder: z.number().nullable(),
    recipeId: id.nullable(),
    conditions: shownConditions,
    assumed: z.boolean(),
    status: z.enum(statuses),
    lostReason: z.string().nullable(),
  })
  .openapi('Vessel')
export type Vessel = z.infer<typeof Vessel>
