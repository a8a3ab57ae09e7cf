import { column } from './columns.ts'
import { id } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'
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

/** Any piece followed by a code: whole, or a part cut from another. */
export const skein = plainRecord('Skein', {
  trialId: column.ours(id.nullable(), 'plain'),
  code: column.name(),
  role: column.choiceOr(roles, 'treated'),
  cutFromId: column.maybeReference(),
  cutAt: column.moment(),
  baseId: column.maybeReference(),
  massG: column.maybeNumber({ moreThan: 0, max: 20_000 }),
  blueWoolNumber: column.maybeNumber({ min: 1, max: 8, whole: true }),
  fibre: column.text(),
  conditions: column.conditions(),
  status: column.choiceOr(statuses, 'planned'),
  lostReason: column.text(),
})
export type NewSkein = z.infer<typeof skein.sent>
export type Skein = z.infer<typeof skein.shown>
