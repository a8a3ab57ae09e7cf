import { column } from './columns.ts'
import { plainRecord } from './record-schemas.ts'
import type { z } from './schema.ts'

export const methods = ['instrument', 'photo', 'eye'] as const

const sd = () => column.maybeNumber({ min: 0, max: 50 })

/** A way of measuring, with the standard deviation of one placing on each axis. */
export const instrument = plainRecord('Instrument', {
  name: column.name(),
  method: column.choice(methods),
  sdL: sd(),
  sdA: sd(),
  sdB: sd(),
  sdFrom: column.choiceOr(['gauge check', 'entered', 'planning value'], 'planning value'),
  checkedOn: column.day(),
})
export type Instrument = z.infer<typeof instrument.shown>
