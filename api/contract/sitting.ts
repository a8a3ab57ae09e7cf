import { methods } from './instrument.ts'
import {
  id,
  listQuery,
  maybeDecimal,
  maybeId,
  maybeMoment,
  maybeText,
  shortText,
  stored,
} from './quantity.ts'
import { z } from './schema.ts'

const fields = {
  trialId: maybeId,
  method: z.enum(methods),
  instrumentId: maybeId,
  at: maybeMoment,
  label: shortText,
  illuminant: maybeText,
  observer: maybeText,
  geometry: maybeText,
  apertureMm: maybeDecimal({ moreThan: 0, max: 500 }),
  card: maybeText,
  light: maybeText,
  inFrameStandardId: maybeId,
  person: maybeText,
}

export const NewSitting = z.object({ id: id.optional(), ...fields }).openapi('NewSitting')
export type NewSitting = z.infer<typeof NewSitting>

const { trialId: _trialId, ...changeable } = fields
export const ChangedSitting = z.object(changeable).partial().openapi('ChangedSitting')

/** `?trialId` gives the sittings of one trial and those that are shared. */
export const sittingQuery = listQuery.extend({ trialId: id.optional() })

/** One occasion of measuring with one method and setting: what makes readings comparable. */
export const Sitting = z
  .object({
    ...stored,
    trialId: id.nullable(),
    method: z.enum(methods),
    instrumentId: id.nullable(),
    at: z.string().nullable(),
    label: z.string(),
    illuminant: z.string().nullable(),
    observer: z.string().nullable(),
    geometry: z.string().nullable(),
    apertureMm: z.number().nullable(),
    card: z.string().nullable(),
    light: z.string().nullable(),
    inFrameStandardId: id.nullable(),
    person: z.string().nullable(),
  })
  .openapi('Sitting')
export type Sitting = z.infer<typeof Sitting>
