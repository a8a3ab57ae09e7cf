import { id, maybeId, stored } from './quantity.ts'
import { z } from './schema.ts'

/** By plan: a level given to exactly one of a session, a vessel or a skein. */
export const NewTreatment = z
  .object({
    id: id.optional(),
    levelId: id,
    sessionId: maybeId,
    vesselId: maybeId,
    skeinId: maybeId,
  })
  .openapi('NewTreatment')
export type NewTreatment = z.infer<typeof NewTreatment>

export const Treatment = z
  .object({
    ...stored,
    factorId: id,
    levelId: id,
    /** Where the work differed from the drawn plan: the level that had been drawn. */
    drawnLevelId: id.nullable(),
    sessionId: id.nullable(),
    vesselId: id.nullable(),
    skeinId: id.nullable(),
  })
  .openapi('Treatment')
export type Treatment = z.infer<typeof Treatment>
