import { id, maybeDecimal, maybeId, maybeMoment, maybeText, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'
import { sentConditions, shownConditions } from './session.ts'
import { statuses } from './vessel.ts'

export const roles = [
  'treated',
  'blank',
  'twin',
  'dark twin',
  'known good',
  'known bleeder',
  'companion',
  'blue wool',
  'standard',
  'bled',
] as const

const fields = {
  code: shortText,
  cutFromId: maybeId,
  cutAt: maybeMoment,
  baseId: maybeId,
  massG: maybeDecimal({ moreThan: 0, max: 20_000 }),
  blueWoolNumber: maybeDecimal({ min: 1, max: 8, whole: true }),
  fibre: maybeText,
  lostReason: maybeText,
}

export const NewSkein = z
  .object({
    id: id.optional(),
    ...fields,
    role: z.enum(roles).default('treated'),
    conditions: sentConditions.default({}),
    status: z.enum(statuses).default('planned'),
  })
  .openapi('NewSkein')
export type NewSkein = z.infer<typeof NewSkein>

export const ChangedSkein = z
  .object({ ...fields, role: z.enum(roles), conditions: sentConditions, status: z.enum(statuses) })
  .partial()
  .openapi('ChangedSkein')

/** Any piece followed by a code: whole, or a part cut from another. */
export const Skein = z
  .object({
    ...stored,
    trialId: id.nullable(),
    code: z.string(),
    role: z.enum(roles),
    cutFromId: id.nullable(),
    cutAt: z.string().nullable(),
    baseId: id.nullable(),
    massG: z.number().nullable(),
    blueWoolNumber: z.number().nullable(),
    fibre: z.string().nullable(),
    conditions: shownConditions,
    status: z.enum(statuses),
    lostReason: z.string().nullable(),
  })
  .openapi('Skein')
export type Skein = z.infer<typeof Skein>
