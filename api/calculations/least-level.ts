import { type Fault, Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { leastLevelThatHolds } from '#api/science/verdicts/least-level-that-holds.ts'
import type { ExtraLoss, LadderStep, LadderVerdict } from '#api/science/verdicts/level-rows.ts'
import { calculation, level as fraction, unavailable, workings } from './calculation.ts'

const mostRows = 20_000
const mostLevels = 64

const label = z.union([z.string().min(1).max(200), z.number()])
const rows = z
  .array(
    z.object({
      level: label,
      block: label.optional(),
      vessel: label.optional(),
      value: z.number(),
      side: z.record(z.string(), z.number()).optional(),
    }),
  )
  .min(1)
  .max(mostRows)

const request = z.object({
  rows,
  order: z.array(label).min(1).max(mostLevels).optional(),
  reference: label.optional(),
  margin: z.number().gt(0),
  confidence: fraction.optional(),
  direction: z.enum(['smaller-is-better', 'larger-is-better']).optional(),
  method: z.enum(['paired', 'model', 'pooled']).optional(),
  noiseRms: z.number().min(0).optional(),
  sdPlanned: z.number().gt(0).optional(),
  limits: z
    .array(
      z
        .object({
          side: z.string().min(1).max(200),
          atLeast: z.number().optional(),
          atMost: z.number().optional(),
          end: z.enum(['low', 'high']).optional(),
        })
        .refine((it) => it.atLeast !== undefined || it.atMost !== undefined, {
          error: 'A limit has atLeast or atMost.',
        }),
    )
    .max(mostLevels)
    .optional(),
})

const verdict = z.enum(['holds', 'does-not-hold', 'not-settled'])
const number = z.union([z.number(), unavailable])

const reply = z.object({
  verdict,
  least: label.nullable(),
  reference: label,
  window: z.union([z.object({ from: label, to: label }), unavailable]),
  steps: z.array(
    z.object({
      level: label,
      n: z.number(),
      mean: number,
      extra: number,
      se: number,
      df: number,
      lower: number,
      upper: number,
      net: z.object({ extra: number, upper: number }).optional(),
      limits: z.array(z.object({ side: z.string(), worst: number, met: z.boolean(), missing: z.number() })),
      answer: verdict,
      holds: z.boolean(),
    }),
  ),
  blocksNeeded: number,
  ...workings,
})

type Request = z.output<typeof request>

/** `POST /api/calculations/least-level`: the least level that is no worse than the reference. */
export const leastLevel = calculation({
  name: 'least-level',
  summary: 'The least level that holds against a reference, step by step',
  request,
  reply,
  compute: (body) => {
    refuseWhatDoesNotFit(body)
    const found = leastLevelThatHolds(body.rows, body)
    return {
      verdict: found.verdict,
      least: found.least ?? null,
      reference: found.reference,
      window: found.window,
      steps: found.steps.map(presentStep),
      blocksNeeded: 'blocks' in found.blocksNeeded ? found.blocksNeeded.blocks : found.blocksNeeded,
      method: methodInWords(found),
      cautions: [...found.cautions],
    }
  },
})

function presentStep(step: LadderStep): z.output<typeof reply>['steps'][number] {
  const or = (loss: ExtraLoss, value: number | undefined): number | { unavailable: string } =>
    value ?? { unavailable: loss.unavailable ?? 'This cannot be worked out from these rows.' }
  return {
    level: step.level,
    n: step.n,
    mean: or(step, step.mean),
    extra: or(step, step.extra),
    se: or(step, step.se),
    df: or(step, step.df),
    lower: or(step, step.lower),
    upper: or(step, step.upper),
    ...(step.net === undefined
      ? {}
      : { net: { extra: or(step.net, step.net.extra), upper: or(step.net, step.net.upper) } }),
    limits: step.limits.map(({ side, worst, met, missing }) => ({
      side,
      worst: worst ?? { unavailable: 'Nothing was recorded.' },
      met,
      missing,
    })),
    answer: step.answer,
    holds: step.holds,
  }
}

const methods = {
  paired: 'Paired t on differences within blocks',
  model: 'A model with levels fixed and blocks random (REML, Satterthwaite)',
  pooled: 'One-way comparison of units with one common variance',
} as const

function methodInWords({ method, confidence, reference }: LadderVerdict): string {
  return `${methods[method]}; one-sided limits at ${confidence}; fixed order from ${reference} downwards, stopping at the first level that does not hold.`
}

/** Faults that lie between fields: found before science is asked, each with its pointer. */
function refuseWhatDoesNotFit(body: Request): void {
  const faults = [...levelFaults(body), ...blockFaults(body)]
  if (faults.length > 0) throw new Problem('at-fault', 'These rows cannot be judged by this rule.', faults)
}

const mostFaults = 200

function levelFaults({ rows, order, reference }: Request): Fault[] {
  const faults: Fault[] = []
  const met = new Set(rows.map((row) => String(row.level)))
  const known = order === undefined ? met : new Set(order.map(String))
  if (order === undefined) {
    if (rows.some((row) => typeof row.level === 'string'))
      faults.push({
        pointer: pointerTo(['order']),
        detail: 'Levels that are text need an order, least first.',
      })
    if (met.size > mostLevels)
      faults.push({
        pointer: pointerTo(['rows']),
        detail: `At most ${mostLevels} levels can be judged; there are ${met.size}.`,
      })
  }
  const before = new Set<string>()
  order?.forEach((level, place) => {
    if (before.has(String(level)))
      faults.push({ pointer: pointerTo(['order', place]), detail: `“${level}” is in the order twice.` })
    before.add(String(level))
  })
  rows.forEach((row, place) => {
    if (!known.has(String(row.level)) && faults.length < mostFaults)
      faults.push({
        pointer: pointerTo(['rows', place, 'level']),
        detail: `The level “${row.level}” is not in the order.`,
      })
  })
  if (reference !== undefined && !known.has(String(reference)))
    faults.push({
      pointer: pointerTo(['reference']),
      detail: `The reference “${reference}” is none of the levels.`,
    })
  return faults
}

function blockFaults({ rows, method }: Request): Fault[] {
  if (method === 'pooled') return []
  const without = rows.flatMap((row, place) => (row.block === undefined ? [place] : []))
  // Without any block the comparison is pooled, unless a method was asked for that needs them.
  if (without.length === 0 || (without.length === rows.length && method === undefined)) return []
  const detail =
    method === undefined
      ? 'Other rows have a block and this one has none.'
      : `“${method}” compares within blocks, and this row has none.`
  return without
    .slice(0, mostFaults)
    .map((place) => ({ pointer: pointerTo(['rows', place, 'block']), detail }))
}
