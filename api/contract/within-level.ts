import { z } from './schema.ts'

/** Which level of the other factor is meant, where a trial varies two things (of more, their ids joined by “+”); all of them unless given. */
export const WithinLevel = z.object({ within: z.string().max(400).optional() }).openapi('WithinLevel')
export type WithinLevel = z.infer<typeof WithinLevel>
