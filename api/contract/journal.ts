import { id, listOf } from './quantity.ts'
import { z } from './schema.ts'

/** A change of what is judged, made after the first reading of a trial. */
export const JournalRow = z
  .object({
    id,
    /** When, by the server's clock. */
    at: z.iso.datetime(),
    who: z.string().nullable(),
    why: z.string().nullable(),
    noun: z.string(),
    recordId: id,
    action: z.enum(['added', 'changed', 'removed', 'corrected']),
    /** The whole record before, as its own address showed it; null for what was added. */
    before: z.record(z.string(), z.unknown()).nullable(),
    /** The whole record after; null for what was removed. Of a correction it is the later record, under its own id. */
    after: z.record(z.string(), z.unknown()).nullable(),
    /** The skeins of this trial whose results hang on it. */
    skeinIds: z.array(id),
  })
  .openapi('JournalRow')
export type JournalRow = z.infer<typeof JournalRow>

/** A page of the journal; `from` says from when it was kept. */
export const JournalPage = listOf(JournalRow).extend({ from: z.iso.datetime() }).openapi('JournalPage')
