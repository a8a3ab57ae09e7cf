import { decimal, id } from './quantity.ts'
import { z } from './schema.ts'
import { sessionKinds } from './session.ts'
import { vesselKinds } from './vessel.ts'

const bench = {
  sessions: decimal({ min: 1, max: 50, whole: true }),
  vesselsPerLevel: decimal({ min: 1, max: 20, whole: true }),
  skeinsPerVessel: decimal({ min: 1, max: 20, whole: true }),
}
const seed = z.number().int().min(0).max(Number.MAX_SAFE_INTEGER)

/** A plan to be counted and tried, written down nowhere. What is left out comes from the rule, else from the pattern. */
export const TriedPlan = z
  .object({
    ...bench,
    margin: decimal({ moreThan: 0, max: 1000 }).optional(),
    confidence: decimal({ moreThan: 0.5, max: 0.999 }).optional(),
    sdOfDifferences: decimal({ moreThan: 0, max: 200 }).optional(),
    /** Mean difference between readings of an unchanged skein, ΔE00. */
    noise: decimal({ min: 0, max: 200 }).optional(),
    seed: seed.optional(),
    trials: decimal({ min: 100, max: 20_000, whole: true }).default(20_000),
  })
  .openapi('TriedPlan')
export type TriedPlan = z.infer<typeof TriedPlan>

const PlanGuard = z
  .object({
    kind: z.enum(['skeins-share', 'few-sessions', 'one-level', 'no-reference']),
    title: z.string(),
    text: z.array(z.string()),
    /** The bench that would be better, if another one mends it. */
    offer: z
      .object({
        sessions: z.number().int(),
        vesselsPerLevel: z.number().int(),
        skeinsPerVessel: z.number().int(),
      })
      .nullable(),
  })
  .openapi('PlanGuard')
export type PlanGuard = z.infer<typeof PlanGuard>

/** What a plan counts, what is wrong with its counting, and how often it would answer rightly. */
export const PlanTried = z
  .object({
    counts: z.object({
      sessions: z.number().int(),
      vessels: z.number().int(),
      skeins: z.number().int(),
      /** Independent units of each level: what n means. */
      unitsPerLevel: z.number().int(),
      skeinsPerLevel: z.number().int(),
      unit: z.enum(['session', 'vessel', 'parent', 'skein']),
    }),
    guards: z.array(PlanGuard),
    power: z.array(
      z.object({
        sessions: z.number().int(),
        /** Share of the invented trials that say “holds” when the level is truly as good as the reference. */
        saysHolds: z.number(),
        /** The same when it truly loses the whole margin more. */
        saysWrongly: z.number(),
      }),
    ),
    /** Why there is nothing to try, if there is not. */
    nothingToTry: z.string().nullable(),
    trials: z.number().int(),
    seed: z.number().int(),
    margin: z.number().nullable(),
    confidence: z.number(),
    sdOfDifferences: z.number(),
    /** Where the spread comes from, as a sentence. */
    sdFrom: z.string(),
    noise: z.number(),
    noiseFrom: z.string(),
  })
  .openapi('PlanTried')
export type PlanTried = z.infer<typeof PlanTried>

export const DrawPlaces = z
  .object({
    ...bench,
    seed: seed.optional(),
    /** A twin of the reference in each session, cut from it and never worn: read again, it shows the noise. */
    twins: z.boolean().default(false),
  })
  .openapi('DrawPlaces')
export type DrawPlaces = z.infer<typeof DrawPlaces>

const DrawnVessel = z.object({
  id,
  label: z.string(),
  kind: z.enum(vesselKinds),
  place: z.string().nullable(),
  /** Its turn in the order of working. */
  order: z.number().int().nullable(),
  /** The level of each factor that this vessel is given, in words; empty where each skein in it has its own. */
  levels: z.array(z.object({ levelId: id, label: z.string() })),
  skeins: z.array(
    z.object({
      id,
      code: z.string(),
      role: z.string(),
      place: z.string().nullable(),
      level: z.string().nullable(),
    }),
  ),
})
export type DrawnVessel = z.infer<typeof DrawnVessel>

/** The bench as it was drawn, places in order. */
export const DrawnPlan = z
  .object({
    seed: z.number().nullable(),
    /** What was measured so far, and when the first of it was written down. */
    results: z.number().int(),
    firstResultAt: z.string().nullable(),
    /** How evenly the levels stand over places and turns, in words; empty before the draw. */
    balance: z.array(z.string()),
    sessions: z.array(
      z.object({
        id,
        label: z.string(),
        kind: z.enum(sessionKinds),
        heldOn: z.string().nullable(),
        vessels: z.array(DrawnVessel),
      }),
    ),
  })
  .openapi('DrawnPlan')
export type DrawnPlan = z.infer<typeof DrawnPlan>
