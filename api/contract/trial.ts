import { decimal, id, longText, maybeDecimal, maybeMoment, maybeText, shortText, stored } from './quantity.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

export const stages = [
  'soak',
  'dye',
  'set',
  'rinse',
  'dry',
  'wash',
  'contact',
  'rub',
  'light',
  'remedy',
] as const
export const patterns = ['P0', 'P1', 'P2', 'P3', 'P4', 'P5', 'P6', 'P7', 'P8', 'own'] as const
export const blocks = ['session', 'vessel', 'parent'] as const

const held = z
  .array(
    z.object({
      key: shortText,
      value: z.union([z.number(), z.string().trim().max(400)]),
      plusMinus: z.number().min(0).optional(),
    }),
  )
  .max(100)

const conditions = z.record(z.string(), z.unknown())

export const NewTrial = z
  .object({
    id: id.optional(),
    title: shortText,
    question: longText,
    expectation: maybeText,
    pattern: z.enum(patterns).default('own'),
    block: z.enum(blocks).default('session'),
    seed: z
      .number()
      .int()
      .min(0)
      .max(Number.MAX_SAFE_INTEGER)
      .nullish()
      .transform((seed) => seed ?? null),
    conditions: conditions.default({}),
    held: held.default([]),
    invented: z.boolean().default(false),
  })
  .openapi('NewTrial')

export const ChangedTrial = z
  .object({
    title: shortText,
    question: longText,
    expectation: maybeText,
    pattern: z.enum(patterns),
    block: z.enum(blocks),
    seed: z.number().int().min(0).max(Number.MAX_SAFE_INTEGER).nullable(),
    conditions,
    held,
    archivedAt: maybeMoment,
  })
  .partial()
  .openapi('ChangedTrial')

export const Trial = z
  .object({
    ...stored,
    title: z.string(),
    question: z.string(),
    expectation: z.string().nullable(),
    pattern: z.enum(patterns),
    block: z.enum(blocks),
    seed: z.number().nullable(),
    conditions: z.record(z.string(), z.unknown()),
    held: z.array(
      z.object({
        key: z.string(),
        value: z.union([z.number(), z.string()]),
        plusMinus: z.number().optional(),
      }),
    ),
    invented: z.boolean(),
    archivedAt: z.string().nullable(),
  })
  .openapi('Trial')
export type Trial = z.infer<typeof Trial>

const NewLevel = z
  .object({
    id: id.optional(),
    label: shortText,
    value: maybeDecimal(),
    isReference: z.boolean().default(false),
  })
  .openapi('NewLevel')

/** Levels stand least first; a number’s levels are put in order here, a category’s as they are sent. */
export const NewFactor = z
  .object({
    id: id.optional(),
    key: shortText,
    stage: z.enum(stages).optional(),
    kind: z.enum(['number', 'category']).optional(),
    ordered: z.boolean().optional(),
    unit: maybeText,
    levels: z.array(NewLevel).min(1).max(60),
  })
  .openapi('NewFactor')
export type NewFactor = z.infer<typeof NewFactor>

export const Level = z
  .object({
    id,
    position: z.number().int(),
    label: z.string(),
    value: z.number().nullable(),
    isReference: z.boolean(),
  })
  .openapi('Level')

export const Factor = z
  .object({
    ...stored,
    trialId: id,
    key: z.string(),
    label: z.string(),
    stage: z.enum(stages),
    kind: z.enum(['number', 'category']),
    ordered: z.boolean(),
    unit: z.string().nullable(),
    levels: z.array(Level),
  })
  .openapi('Factor')
export type Factor = z.infer<typeof Factor>

export const RuleCondition = z
  .object({
    outcome: shortText,
    fibre: z.string().trim().min(1).max(60).optional(),
    wear: wear.default({}),
    end: z.enum(['low', 'high']).default('low'),
    against: z.enum(['reference', 'next level', 'control', 'standard', 'none']).default('none'),
    /** What is asked: no worse, alike, better, within a limit, to the standard, light, open against covered, sees. */
    question: z
      .enum([
        'no-worse',
        'alike',
        'better',
        'within-limit',
        'to-standard',
        'light',
        'open-against-covered',
        'sees',
      ])
      .optional(),
    /** How rules of the first version said it; needed only where no question is named. */
    statistic: z.enum(['upper limit', 'mean', 'every unit', 'worst lot', 'bracket']).optional(),
    margin: decimal({ moreThan: 0, max: 1000 }).optional(),
    /** Of “better”: the least gain worth having. */
    leastGain: decimal({ min: 0, max: 1000 }).optional(),
    atLeast: z.number().optional(),
    atMost: z.number().optional(),
    direction: z.enum(['smaller is better', 'larger is better']).default('smaller is better'),
  })
  .openapi('RuleCondition')
export type RuleCondition = z.infer<typeof RuleCondition>

export const NewRule = z
  .object({
    id: id.optional(),
    conditions: z.array(RuleCondition).min(1).max(20),
    method: z.enum(['paired', 'model', 'pooled']).default('paired'),
    plannedSessions: decimal({ min: 1, max: 200, whole: true }),
    looks: decimal({ min: 1, max: 20, whole: true }).default(1),
    confidence: decimal({ min: 0.8, max: 0.999 }).default(0.95),
    reason: maybeText,
  })
  .openapi('NewRule')
export type NewRule = z.infer<typeof NewRule>

export const Rule = z
  .object({
    ...stored,
    trialId: id,
    edition: z.number().int(),
    conditions: z.array(RuleCondition),
    method: z.enum(['paired', 'model', 'pooled']),
    plannedSessions: z.number().int(),
    looks: z.number().int(),
    confidence: z.number(),
    lockedAt: z.string().nullable(),
    reason: z.string().nullable(),
  })
  .openapi('Rule')
export type Rule = z.infer<typeof Rule>
