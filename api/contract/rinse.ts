import { column } from './columns.ts'
import { decimal } from './quantity.ts'
import { measuredRecord } from './record-schemas.ts'
import { z } from './schema.ts'

/** One change of water of a skein or of a vessel, with how clear it came out (5 clear, 1 strong). */
export const rinse = measuredRecord('Rinse', {
  skeinId: column.maybeReference(),
  vesselId: column.maybeReference(),
  number: { sent: decimal({ min: 1, max: 40, whole: true }), shown: z.number().int(), kept: 'plain' },
  mlPerG: column.maybeNumber({ moreThan: 0, max: 500 }),
  temperatureC: column.maybeNumber({ min: 0, max: 95 }),
  minutes: column.maybeNumber({ min: 0, max: 1440 }),
  clarity: column.maybeNumber({ min: 1, max: 5, step: 0.5 }),
  detergentGL: column.maybeNumber({ min: 0, max: 50 }),
})
export type NewRinse = z.infer<typeof rinse.sent>
export type Rinse = z.infer<typeof rinse.shown>
