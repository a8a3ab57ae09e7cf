import { id, maybeMoment, maybeText, stored } from './quantity.ts'
import { z } from './schema.ts'

const fields = { place: maybeText, inAt: maybeMoment, outAt: maybeMoment }

export const NewPlacement = z
  .object({ id: id.optional(), skeinId: id, ...fields, covered: z.boolean().default(false) })
  .openapi('NewPlacement')
export type NewPlacement = z.infer<typeof NewPlacement>

export const ChangedPlacement = z
  .object({ ...fields, covered: z.boolean() })
  .partial()
  .openapi('ChangedPlacement')

/** A skein in a vessel, with its place; `covered` (under foil) is not counted as wear. */
export const Placement = z
  .object({
    ...stored,
    skeinId: id,
    vesselId: id,
    place: z.string().nullable(),
    covered: z.boolean(),
    inAt: z.string().nullable(),
    outAt: z.string().nullable(),
  })
  .openapi('Placement')
export type Placement = z.infer<typeof Placement>
