import { id } from './quantity.ts'
import { z } from './schema.ts'

/** Which level of the other factor is meant, where a trial varies two things; the first of them unless given. */
export const WithinLevel = z.object({ within: id.optional() }).openapi('WithinLevel')
export type WithinLevel = z.infer<typeof WithinLevel>
