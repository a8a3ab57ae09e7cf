import { answers } from './finding.ts'
import { id, stored } from './quantity.ts'
import { z } from './schema.ts'
import { standing } from './standing.ts'

/** A verdict as it was declared: kept for good, and counted as a look. */
export const DeclaredVerdict = z
  .object({
    ...stored,
    trialId: id,
    ruleEdition: z.number().int(),
    look: z.number().int(),
    /** The level of the other factor that it speaks of, where there is one. */
    withinLevelId: id.nullable(),
    /** The part that it speaks of: ids of levels, joined by “+”; “” is of the whole trial. */
    stratum: z.string(),
    sessionsN: z.number().int(),
    declaredAt: z.iso.datetime(),
    answer: z.enum(answers),
    headline: z.string(),
    lead: z.string(),
    /** The whole finding as it stood. */
    body: z.record(z.string(), z.unknown()),
    ...standing,
  })
  .openapi('DeclaredVerdict')
export type DeclaredVerdict = z.infer<typeof DeclaredVerdict>
