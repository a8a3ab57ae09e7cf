import { column, unchanging } from './columns.ts'
import { methods } from './instrument.ts'
import { id, listQuery } from './quantity.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'

/** One occasion of measuring with one method and setting: what makes readings comparable. */
export const sitting = plainRecord('Sitting', {
  trialId: unchanging(column.maybeReference()),
  method: column.choice(methods),
  instrumentId: column.maybeReference(),
  at: column.moment(),
  label: column.name(),
  illuminant: column.text(),
  observer: column.text(),
  geometry: column.text(),
  apertureMm: column.maybeNumber({ moreThan: 0, max: 500 }),
  card: column.text(),
  light: column.text(),
  inFrameStandardId: column.maybeReference(),
  person: column.text(),
})
export type NewSitting = z.infer<typeof sitting.sent>
export type Sitting = z.infer<typeof sitting.shown>

/** `?trialId` gives the sittings of one trial and those that are shared. */
export const sittingQuery = listQuery.extend({ trialId: id.optional() })
