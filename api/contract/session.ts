import { column } from './columns.ts'
import { id } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'

export const sessionKinds = ['stove', 'bench', 'wash', 'contact', 'rub', 'light', 'remedy'] as const

/** One occasion that holds all or many treatments. Without a trial it is shared: a wash day, a window. */
export const session = plainRecord('Session', {
  trialId: column.ours(id.nullable(), 'plain'),
  kind: column.choiceOr(sessionKinds, 'stove'),
  heldOn: column.day(),
  label: column.name(),
  place: column.text(),
  altitudeM: column.maybeNumber({ min: -450, max: 5500 }),
  waterAlkalinityMgL: column.maybeNumber({ min: 0, max: 1500 }),
  conditions: column.conditions(),
  note: column.text(),
})
export type NewSession = z.infer<typeof session.sent>
