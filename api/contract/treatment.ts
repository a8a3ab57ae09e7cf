import { column, unchanging } from './columns.ts'
import { id } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'

/** By plan: a level given to exactly one of a session, a vessel or a skein. */
export const treatment = plainRecord('Treatment', {
  factorId: column.ours(id, 'plain'),
  levelId: unchanging(column.reference()),
  /** Where the work differed from the drawn plan: the level that had been drawn. */
  drawnLevelId: column.ours(id.nullable(), 'plain'),
  sessionId: unchanging(column.maybeReference()),
  vesselId: unchanging(column.maybeReference()),
  skeinId: unchanging(column.maybeReference()),
})
export type NewTreatment = z.infer<typeof treatment.sent>
