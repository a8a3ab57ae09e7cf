import { answers } from './finding.ts'
import { id } from './quantity.ts'
import { z } from './schema.ts'

const colour = z.object({ L: z.number(), a: z.number(), b: z.number() })

const Due = z
  .object({
    kind: z.enum(['light', 'wash', 'read', 'session']),
    trialId: id,
    sessionId: id,
    /** The day it falls due; null: whenever it suits. */
    day: z.string().nullable(),
    what: z.string(),
    /** Of which trial, and how much. */
    of: z.string(),
    button: z.enum(['Read', 'Bench sheet', 'Open']),
  })
  .openapi('Due')
export type Due = z.infer<typeof Due>

const OpenTrial = z
  .object({
    trial: z.object({ id, title: z.string(), question: z.string(), invented: z.boolean() }),
    sessions: z.object({ read: z.number().int(), planned: z.number().int() }),
    sessionWords: z.string(),
    skeinsRead: z.number().int(),
    skeins: z.number().int(),
    /** The levels’ mean colours, as they came out; empty where nothing was read in colour. */
    swatches: z.array(colour),
    verdict: z.enum(answers).nullable(),
    /** “35 minutes of steam holds”, or what it waits for. */
    words: z.string(),
  })
  .openapi('OpenTrial')
export type OpenTrial = z.infer<typeof OpenTrial>

const NewestFinding = z
  .object({
    trialId: id,
    question: z.string(),
    invented: z.boolean(),
    answer: z.enum(answers),
    headline: z.string(),
    lead: z.string(),
    counts: z.string(),
    /** Where a second factor splits the trial: the answers at its other levels, a sentence each. */
    alsoTried: z.array(z.string()),
    /** The level of the second factor that it speaks of. */
    withinLevelId: id.nullable(),
    pair: z.object({ before: colour, after: colour }).nullable(),
    /** “three warm hand washes”. */
    after: z.string(),
  })
  .openapi('NewestFinding')
export type NewestFinding = z.infer<typeof NewestFinding>

/** What the first page shows. */
export const Home = z
  .object({ due: z.array(Due), open: z.array(OpenTrial), newest: NewestFinding.nullable() })
  .openapi('Home')
export type Home = z.infer<typeof Home>
