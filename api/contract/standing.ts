import { answers } from './finding.ts'
import { z } from './schema.ts'

/** How what was recorded or published stands today; its own words never change. */
export const standing = {
  judgedBy: z.enum(['first version', 'this version']),
  /** What today's claim of the same part says; null where there is none any more. */
  today: z.object({ answer: z.enum(answers), headline: z.string() }).nullable(),
  /** A later change of the record gives another answer, or a later one of the same part exists. */
  superseded: z.boolean(),
  /** What to say beside it: “Superseded: …”, “Judged by an older version; today: …”; null where nothing has changed. */
  mark: z.string().nullable(),
}

const Standing = z.object(standing)
export type Standing = z.infer<typeof Standing>
