import { column } from './columns.ts'
import { id } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'
import { stages } from './trial.ts'

export const vesselKinds = ['pot', 'jar', 'packet', 'tray', 'bowl', 'card'] as const
export const statuses = ['planned', 'done', 'lost'] as const

/** One filling of a pot, jar, packet, tray, bowl, wash jar or light card, at one stage of a session. */
export const vessel = plainRecord('Vessel', {
  sessionId: column.ours(id, 'plain'),
  stage: column.choice(stages),
  kind: column.choice(vesselKinds),
  label: column.name(),
  equipment: column.text(),
  place: column.text(),
  drawnOrder: column.maybeNumber({ min: 0, max: 100_000, whole: true }),
  recipeId: column.maybeReference(),
  conditions: column.conditions(),
  /** Made by an import that named none. */
  assumed: column.flag(),
  status: column.choiceOr(statuses, 'planned'),
  lostReason: column.text(),
})
export type NewVessel = z.infer<typeof vessel.sent>
