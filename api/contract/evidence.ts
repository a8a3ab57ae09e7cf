import { answers, type Finding } from './finding.ts'
import { id, stored } from './quantity.ts'
import { z } from './schema.ts'
import { standing } from './standing.ts'
import { Level } from './trial.ts'

/** What an evidence sheet says, in the order in which it says it. */
export const Sheet = z
  .object({
    title: z.string(),
    headline: z.string(),
    lead: z.string(),
    answer: z.enum(answers),
    what: z.string(),
    /** The light and observer of its colours, as recorded. Sheets frozen earlier lack it. */
    viewedUnder: z.string().optional(),
    test: z.string(),
    howMany: z.string(),
    worst: z.string(),
    /** What the same rule says of the other levels of a second factor; empty where there is none. Sheets frozen earlier lack it. */
    alsoTried: z.string().optional(),
    /** The days of the work. Like the next two, sheets of the first version lack it. */
    dates: z.string().optional(),
    controls: z.string().optional(),
    /** Every correction of a reading, with its reason. */
    corrections: z.array(z.string()).optional(),
    /** Every other change of what is judged that was made after the first reading. */
    changes: z.array(z.string()).optional(),
    notTested: z.string(),
    evidence: z.object({ step: z.enum(['E0', 'E1', 'E2', 'E3', 'E4']), why: z.string() }),
    rule: z.string(),
    method: z.array(z.string()),
    cautions: z.array(z.string()),
    invented: z.boolean(),
  })
  .openapi('Sheet')
export type Sheet = z.infer<typeof Sheet>

/** What is frozen: the words and the whole finding behind them; of more than one part, every part. Sheets of the first version have no parts. */
export type FrozenBody = {
  readonly sheet: Sheet
  readonly finding: Finding
  readonly parts?: readonly Finding[]
}

/** What a button waits for (“the recorded verdict”), and the sentence that says so. */
const Refused = z.object({ waitsFor: z.string(), says: z.string() })

export const DraftSheet = z
  .object({
    sheet: Sheet,
    hasVerdict: z.boolean(),
    /** When the verdict that it would be published from was recorded. */
    recordedAt: z.iso.datetime().nullable(),
    /** Why the verdict cannot be recorded yet, and why the sheet cannot be published; null where it can. */
    refusedToRecord: Refused.nullable(),
    refusedToPublish: Refused.nullable(),
    /** Where another factor splits the trial: of which of its levels this sheet is, and which there are. */
    within: z
      .object({
        factor: z.string(),
        levelId: z.string(),
        levels: z.array(Level.extend({ id: z.string() })),
      })
      .nullable(),
    /** Where the page stands, for reading and printing. */
    path: z.string(),
  })
  .openapi('DraftSheet')
export type DraftSheet = z.infer<typeof DraftSheet>

export const EvidenceSheet = z
  .object({
    ...stored,
    trialIds: z.array(id),
    headline: z.string(),
    answer: z.enum(answers),
    /** The part that it is of: ids of levels, joined by “+”; “” is of the whole trial. */
    stratum: z.string(),
    step: z.enum(['E0', 'E1', 'E2', 'E3', 'E4']),
    sha256: z.string(),
    /** The checksum, worked out again now, is the one that was published. */
    checksumMatches: z.boolean(),
    madeAt: z.iso.datetime(),
    path: z.string(),
    ...standing,
  })
  .openapi('EvidenceSheet')
export type EvidenceSheet = z.infer<typeof EvidenceSheet>
