import { column, unchanging } from './columns.ts'
import { id } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'

/** A skein in a vessel, with its place. */
export const placement = plainRecord('Placement', {
  skeinId: unchanging(column.reference()),
  vesselId: column.ours(id, 'plain'),
  place: column.text(),
  /** Under foil: not counted as wear. */
  covered: column.flag(),
  inAt: column.moment(),
  outAt: column.moment(),
})
export type NewPlacement = z.infer<typeof placement.sent>
