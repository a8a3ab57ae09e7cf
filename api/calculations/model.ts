import { Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { fitModel } from '#api/science/statistics/model.ts'
import { modelFaults, modelLimits } from '#api/science/statistics/model-faults.ts'
import { calculation, level, unavailable, workings } from './calculation.ts'

const column = z.string().min(1).max(200)

const request = z
  .object({
    rows: z.array(z.record(z.string(), z.unknown())).min(1).max(modelLimits.rows),
    response: column,
    factors: z.array(column).max(modelLimits.factors).optional(),
    covariates: z.array(column).max(100).optional(),
    interactions: z
      .union([z.enum(['none', 'all']), z.array(z.array(column).min(2).max(8)).max(200)])
      .optional(),
    randomIntercepts: z.array(column).max(modelLimits.randomIntercepts).optional(),
    sumsOfSquares: z.enum(['II', 'III']).default('II'),
    meansOf: z.array(column).max(32).optional(),
    contrasts: z.enum(['pairwise', 'reference']).optional(),
    reference: z
      .record(z.string(), z.union([z.string(), z.number(), z.boolean()]).transform(String))
      .optional(),
    level: level.default(0.95),
  })
  .openapi('ModelRequest')

const test = (df: z.ZodRawShape) =>
  z
    .object({ term: z.string(), ...df, F: z.number(), p: z.number() })
    .partial()
    .extend({
      term: z.string(),
      unavailable: z.string().optional(),
    })

const coefficient = z.object({
  term: z.string(),
  estimate: z.number().optional(),
  se: z.number().optional(),
  df: z.number().optional(),
  t: z.number().optional(),
  p: z.number().optional(),
  lower: z.number().optional(),
  upper: z.number().optional(),
  unavailable: z.string().optional(),
})

const mean = z.object({
  level: z.string().optional(),
  levels: z.record(z.string(), z.string()).optional(),
  mean: z.number().optional(),
  se: z.number().optional(),
  df: z.number().optional(),
  lower: z.number().optional(),
  upper: z.number().optional(),
  unavailable: z.string().optional(),
})

const contrast = z.object({
  a: z.string(),
  b: z.string(),
  difference: z.number().optional(),
  se: z.number().optional(),
  df: z.number().optional(),
  t: z.number().optional(),
  p: z.number().optional(),
  lower: z.number().optional(),
  upper: z.number().optional(),
  adjusted: z.enum(['tukey', 'dunnett', 'holm', 'none']).optional(),
  single: z.object({ p: z.number(), lower: z.number(), upper: z.number() }).optional(),
  unavailable: z.string().optional(),
})

const answer = {
  cautions: workings.cautions,
  rows: z.number(),
  means: z.record(z.string(), z.union([z.array(mean), unavailable])),
  contrasts: z.record(z.string(), z.union([z.array(contrast), unavailable])),
  emptyCells: z.array(z.record(z.string(), z.string())),
  aliased: z.array(z.string()),
  confounded: z.array(z.string()),
}

const reply = z.discriminatedUnion('method', [
  z.object({
    method: z.literal('ols'),
    ...answer,
    table: z.union([z.array(test({ df: z.number(), ss: z.number() })), unavailable]),
    residual: z.union([z.object({ df: z.number(), ss: z.number(), sd: z.number() }), unavailable]),
    coefficients: z.union([z.array(coefficient), unavailable]),
    rSquared: z.union([z.number(), unavailable]),
  }),
  z.object({
    method: z.literal('reml'),
    ...answer,
    fixed: z.union([z.array(coefficient), unavailable]),
    table: z.union([z.array(test({ df1: z.number(), df2: z.number() })), unavailable]),
    components: z.array(
      z.object({
        group: z.string(),
        variance: z.number().optional(),
        sd: z.number().optional(),
        groups: z.number().optional(),
        unavailable: z.string().optional(),
      }),
    ),
    residual: z.union([z.object({ variance: z.number(), sd: z.number() }), unavailable]),
    remlCriterion: z.union([z.number(), unavailable]),
    singular: z.boolean(),
  }),
])

/** `POST /api/calculations/model`: factors, covariates, interactions and random intercepts over a table of rows. */
export const model = calculation({
  name: 'model',
  summary: 'A linear or mixed model: tests of terms, coefficients, marginal means and contrasts',
  request,
  reply,
  compute: ({ rows, ...spec }) => {
    const faults = modelFaults(spec, rows)
    if (faults.length > 0)
      throw new Problem(
        'at-fault',
        'This model cannot be worked out as it is.',
        faults.map(({ path, detail }) => ({ pointer: pointerTo(path), detail })),
      )
    return fitModel(spec, rows)
  },
})
