import { id } from './quantity.ts'
import { z } from './schema.ts'
import { Level, Rule } from './trial.ts'

/** The only three words of a verdict, in code; in prose: holds, does not hold, not settled. */
export const answers = ['holds', 'does-not-hold', 'not-settled'] as const

const colour = z.object({ L: z.number(), a: z.number(), b: z.number() })
const limits = { lower: z.number(), upper: z.number() }

/** How strongly the tool speaks: a note, a doubt to confirm, a guard against counting wrongly. */
const Caution = z
  .object({ kind: z.enum(['note', 'doubt', 'guard']), title: z.string(), text: z.string() })
  .openapi('Caution')
export type Caution = z.infer<typeof Caution>

/** One limit beside the loss (staining, rinses, felting), as it was met at one level. */
const SideLimit = z.object({
  key: z.string(),
  label: z.string(),
  limit: z.string(),
  end: z.enum(['low', 'high']),
  worst: z.number().nullable(),
  /** The worst as it is said: grades as “3-4”. */
  worstText: z.string(),
  /** Every session’s value, as it is said. */
  all: z.array(z.string()),
  met: z.boolean(),
  broken: z.boolean(),
  missing: z.number().int(),
})

const Step = z
  .object({
    levelId: id,
    label: z.string(),
    reference: z.boolean(),
    n: z.number().int(),
    mean: z.number().nullable(),
    extra: z.number().nullable(),
    lower: z.number().nullable(),
    upper: z.number().nullable(),
    netExtra: z.number().nullable(),
    netUpper: z.number().nullable(),
    /** The limits that decide, as they are printed everywhere; lower, upper and netUpper are what they come from. */
    deciding: z.object({ value: z.number(), ...limits }).nullable(),
    limits: z.array(SideLimit),
    answer: z.enum(answers).nullable(),
    /** Below the first step that does not hold: shown, never claimed. */
    afterStop: z.boolean(),
    /** The answer with its reason: “holds on colour; felting 3”, “does not hold: stop”. */
    says: z.string(),
  })
  .openapi('Step')
export type Step = z.infer<typeof Step>

const LevelFinding = z
  .object({
    ...Level.shape,
    /** On an axis and in tables: “35 min”; in a sentence: “35 minutes”. */
    tick: z.string(),
    words: z.string(),
    skeins: z.number().int(),
    vessels: z.number().int(),
    sessions: z.number().int(),
    lost: z.number().int(),
    missing: z.number().int(),
    mean: z.number().nullable(),
    sd: z.number().nullable(),
    lower: z.number().nullable(),
    upper: z.number().nullable(),
    before: colour.nullable(),
    after: colour.nullable(),
    /** lighter, duller, yellower … from before to after; empty within the noise. */
    direction: z.array(z.string()),
    withinNoise: z.boolean(),
    worstGrade: z.string().nullable(),
  })
  .openapi('LevelFinding')
export type LevelFinding = z.infer<typeof LevelFinding>

const SkeinFinding = z
  .object({
    id,
    code: z.string(),
    levelId: id.nullable(),
    role: z.string(),
    status: z.enum(['planned', 'done', 'lost']),
    lostReason: z.string().nullable(),
    sessionId: id.nullable(),
    session: z.string().nullable(),
    vesselId: id.nullable(),
    vessel: z.string().nullable(),
    place: z.string().nullable(),
    before: colour.nullable(),
    after: colour.nullable(),
    value: z.number().nullable(),
    grade: z.string().nullable(),
    /** Side results by the key of their limit. */
    side: z.record(z.string(), z.object({ value: z.number(), text: z.string() })),
    readings: z.number().int(),
    spots: z.number().int(),
  })
  .openapi('SkeinFinding')
export type SkeinFinding = z.infer<typeof SkeinFinding>

const Curve = z.object({
  levelId: id,
  points: z.array(
    z.object({
      amount: z.number(),
      n: z.number().int(),
      mean: z.number(),
      lower: z.number().nullable(),
      upper: z.number().nullable(),
    }),
  ),
})

/** Everything that the page of findings shows: computed on asking, never stored. */
export const Finding = z
  .object({
    trialId: id,
    title: z.string(),
    question: z.string(),
    invented: z.boolean(),
    pattern: z.string(),
    rule: Rule.nullable(),
    /** Rule locked before the first row that it uses. */
    lockedBefore: z.boolean(),
    /** “Rule locked 24 February 2026, 9:12, before the first reading. Against 75 minutes …” */
    ruleInWords: z.string(),
    factor: z
      .object({
        id,
        key: z.string(),
        label: z.string(),
        unit: z.string().nullable(),
        kind: z.enum(['number', 'category']),
        stage: z.string(),
      })
      .nullable(),
    /** Where another factor splits the trial: which of its levels the tables are of, and the others. Of several factors an id is a key: ids joined by “+”. */
    within: z
      .object({
        factor: z.string(),
        levelId: z.string(),
        label: z.string(),
        /** As a sentence begins with it: “On silk”. */
        spokenOf: z.string(),
        levels: z.array(Level.extend({ id: z.string() })),
        /** Of all parts together: what each says, in order; of one part alone, empty. */
        parts: z.array(
          z.object({
            levelId: z.string(),
            label: z.string(),
            answer: z.enum(answers),
            headline: z.string(),
            lead: z.string(),
          }),
        ),
        /** What the same rule says of each other level. */
        others: z.array(
          z.object({
            levelId: z.string(),
            label: z.string(),
            answer: z.enum(answers).nullable(),
            headline: z.string(),
          }),
        ),
      })
      .nullable(),
    outcome: z
      .object({
        key: z.string(),
        label: z.string(),
        unit: z.string().nullable(),
        wear: z.record(z.string(), z.number()),
        wearInWords: z.string(),
      })
      .nullable(),
    verdict: z
      .object({
        answer: z.enum(answers),
        /** The least level that holds. */
        levelId: id.nullable(),
        /** The level that the headline speaks of. */
        subjectId: id.nullable(),
        headline: z.string(),
        lead: z.string(),
        counts: z.string(),
        look: z.number().int(),
        sessionsIn: z.number().int(),
        sessionsPlanned: z.number().int(),
        estimate: z
          .object({
            value: z.number(),
            ...limits,
            confidence: z.number(),
            margin: z.number(),
            unit: z.string(),
          })
          .nullable(),
        window: z.object({ from: Level, to: Level }).nullable(),
        windowText: z.string(),
        /** How many more sessions would likely settle it; null when that cannot be said. */
        sessionsMore: z.number().int().nullable(),
        settle: z.string(),
      })
      .nullable(),
    /** Why there is no verdict yet: no rule, no readings. */
    waitsFor: z.string().nullable(),
    steps: z.array(Step),
    levels: z.array(LevelFinding),
    sessions: z.array(z.object({ id, label: z.string(), heldOn: z.string().nullable() })),
    skeins: z.array(SkeinFinding),
    noise: z
      .object({
        floor: z.number(),
        rms: z.number(),
        from: z.string(),
        n: z.number().int(),
        /** One-sided 80 % upper limit of the root mean square: what decides. */
        upperRms: z.number(),
        df: z.number().nullable(),
      })
      .nullable(),
    /** What each gate found, a sentence each. */
    gates: z.array(z.object({ gate: z.string(), open: z.boolean(), says: z.string() })),
    curve: z.array(Curve),
    cautions: z.array(Caution),
    /** How it was worked out, a sentence each. */
    method: z.array(z.string()),
    counts: z.object({
      skeins: z.number().int(),
      vessels: z.number().int(),
      sessions: z.number().int(),
      readings: z.number().int(),
      spots: z.number().int(),
      lost: z.number().int(),
      rows: z.number().int(),
    }),
    notTested: z.array(z.string()),
    evidenceStep: z.object({ step: z.enum(['E0', 'E1', 'E2', 'E3', 'E4']), why: z.string() }),
  })
  .openapi('Finding')
export type Finding = z.infer<typeof Finding>
