import { id, maybeDay, maybeDecimal, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'

export const methods = ['instrument', 'photo', 'eye'] as const
const sdFrom = z.enum(['gauge check', 'entered', 'planning value'])
const sd = () => maybeDecimal({ min: 0, max: 50 })

const fields = {
  name: shortText,
  method: z.enum(methods),
  sdL: sd(),
  sdA: sd(),
  sdB: sd(),
  checkedOn: maybeDay,
}

export const NewInstrument = z
  .object({ id: id.optional(), ...fields, sdFrom: sdFrom.default('planning value') })
  .openapi('NewInstrument')
export const ChangedInstrument = z
  .object({ ...fields, sdFrom })
  .partial()
  .openapi('ChangedInstrument')

/** A way of measuring, with the standard deviation of one placing on each axis. */
export const Instrument = z
  .object({
    ...stored,
    name: z.string(),
    method: z.enum(methods),
    sdL: z.number().nullable(),
    sdA: z.number().nullable(),
    sdB: z.number().nullable(),
    sdFrom,
    checkedOn: z.string().nullable(),
  })
  .openapi('Instrument')
export type Instrument = z.infer<typeof Instrument>
