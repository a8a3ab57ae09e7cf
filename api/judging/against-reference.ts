import { type ArmRow, manyToOne } from '#api/science/statistics/many-to-one.ts'
import { withoutLimits } from '#api/science/verdicts/extra-loss.ts'
import type { ExtraLoss, LadderMethod, LevelRow } from '#api/science/verdicts/level-rows.ts'
import { modelExtraLosses } from '#api/science/verdicts/model-extra-losses.ts'
import { pairedExtraLoss } from '#api/science/verdicts/paired-extra-loss.ts'
import { commonSpread, pooledExtraLoss } from '#api/science/verdicts/pooled-extra-loss.ts'
import { type LevelResults, resultsAt, resultsByLevel } from '#api/science/verdicts/results-by-level.ts'
import { type BlocksAsOne, blocksAsOne } from './blocks-as-one.ts'
import type { ComparedRow } from './compared-row.ts'

/** How several levels share one doubt: each step alone (a fixed order), Dunnett’s limits, or Bonferroni’s. */
export type Family = 'each alone' | 'dunnett' | 'bonferroni'

export type AgainstReference = {
  readonly at: (level: string) => ExtraLoss
  readonly method: LadderMethod
  readonly family: Family
  /** One-sided, of all levels that share a doubt. */
  readonly confidence: number
  /** One-sided, of one comparison by itself; under Dunnett what Bonferroni would give it, which is a little more. */
  readonly confidenceOfEach: number
  /** Blocks were joined, since a unit reached across them. */
  readonly joined: boolean
  /** What the model has to say of itself. */
  readonly notes: readonly string[]
}

export type Comparing = {
  readonly reference: string
  readonly method: LadderMethod
  /** Levels in an order fixed beforehand are stepped through and need no correction; arms without one share a doubt. */
  readonly ordered: boolean
  /** One-sided. */
  readonly confidence: number
  /** 1 where smaller is better, −1 where larger is. */
  readonly sign?: 1 | -1
  /** What is done to each value before anything is averaged: taking off the measuring error. */
  readonly change?: (value: number) => number
}

/**
 * Every level’s difference from the reference, with one-sided limits: within blocks (paired t), by the model of all
 * rows, or without blocks. Several arms without an order are judged together, by Dunnett on arm + block where the blocks
 * are complete, or one-way where there are none; else each with Bonferroni’s limits.
 *
 * Blocks that a unit reaches across count as one, which the model does not know of: then it is paired.
 *
 * @example
 * const level = (level, ...values) => values.map((value, i) => ({ level, block: `day ${i}`, unit: `${level} ${i}`, vessel: `${level} ${i}`, value }))
 * const rows = [...level('35', 1.2, 0.9, 0.9), ...level('75', 1.0, 0.8, 1.1)]
 * againstReference(rows, { reference: '75', method: 'paired', ordered: true, confidence: 0.95 }).at('35') // { n: 3, extra: 0.0333, df: 2, upper: 0.384 }
 */
export function againstReference(rows: readonly ComparedRow[], asked: Comparing): AgainstReference {
  const { reference, sign = 1, change = (value: number) => value } = asked
  const joins = blocksAsOne(rows)
  const method = joins.any && asked.method === 'model' ? 'paired' : asked.method
  const results = resultsByLevel(levelRows(rows, method), change)
  const arms = [...results.keys()].filter((level) => level !== reference)
  const common = { method, joined: joins.any && method === 'paired' }
  if (asked.ordered || arms.length < 2) {
    const { confidence } = asked
    const single = eachAlone(results, joins, { reference, method, confidence, sign })
    return { ...common, ...single, family: 'each alone', confidence, confidenceOfEach: confidence }
  }
  const confidenceOfEach = 1 - (1 - asked.confidence) / arms.length
  const shared = { ...common, confidence: asked.confidence, confidenceOfEach }
  if (!joins.any || method === 'pooled') {
    const all = together(results, { reference, method, confidence: asked.confidence, sign })
    if (all) return { ...shared, ...all, notes: [] }
  }
  const single = eachAlone(results, joins, { reference, method, confidence: confidenceOfEach, sign })
  return { ...shared, ...single, family: 'bonferroni' }
}

/** A unit that filled several vessels is averaged as one; vessels are otherwise kept, for the model needs them. */
function levelRows(rows: readonly ComparedRow[], method: LadderMethod): LevelRow[] {
  const vessels = new Map<string, Set<string>>()
  for (const { level, unit, vessel } of rows) {
    const key = JSON.stringify([level, unit])
    vessels.set(key, (vessels.get(key) ?? new Set()).add(vessel))
  }
  return rows.map(({ level, block, unit, vessel, value }) => {
    if (method === 'pooled') return { level, value, vessel: unit }
    const several = (vessels.get(JSON.stringify([level, unit]))?.size ?? 0) > 1
    return { level, value, block, vessel: several ? unit : vessel }
  })
}

type Single = {
  readonly reference: string
  readonly method: LadderMethod
  readonly confidence: number
  readonly sign: 1 | -1
}

function eachAlone(
  results: ReadonlyMap<string, LevelResults>,
  joins: BlocksAsOne,
  { reference, method, confidence, sign }: Single,
): Pick<AgainstReference, 'at' | 'notes'> {
  if (method === 'model') {
    const { at, cautions } = modelExtraLosses(results, reference, { confidence, sign })
    return { at: (level) => at(level), notes: cautions }
  }
  const against = resultsAt(results, reference)
  if (method === 'pooled') {
    const spread = commonSpread([...results.values()].map((it) => it.units))
    return {
      at: (level) => pooledExtraLoss(resultsAt(results, level), against, { confidence, sign, spread }),
      notes: [],
    }
  }
  return {
    at: (level) =>
      pairedExtraLoss(resultsAt(results, level), against, {
        confidence,
        sign,
        groupOf: joins.any ? joins.groupOf(level, reference) : undefined,
      }),
    notes: [],
  }
}

function armRows(results: ReadonlyMap<string, LevelResults>, method: LadderMethod): ArmRow[] {
  return [...results].flatMap(([arm, { units, blocks }]): ArmRow[] =>
    method === 'pooled'
      ? units.map((value) => ({ arm, value }))
      : [...blocks].map(([block, value]) => ({ arm, block, value })),
  )
}

/** All arms by one model of block + arm; undefined where it cannot be had. */
function together(
  results: ReadonlyMap<string, LevelResults>,
  { reference, confidence, sign, method }: Single,
): Pick<AgainstReference, 'at' | 'family'> | undefined {
  const found = manyToOne(armRows(results, method), { control: reference, confidence })
  if ('unavailable' in found) return undefined
  const against = resultsAt(results, reference)
  return {
    family: found.adjusted === 'dunnett' ? 'dunnett' : 'bonferroni',
    at: (level) => {
      const own = resultsAt(results, level)
      const both = [...own.blocks.keys()].filter((block) => against.blocks.has(block)).length
      const n = method === 'pooled' ? own.units.length : both
      const it = found.comparisons.find(({ arm }) => arm === level)
      if (!it) return withoutLimits({ n }, 'No block shows this level beside the reference.')
      const { difference, se, oneSided } = it
      const mean = own.units.reduce((sum, value) => sum + value, 0) / own.units.length
      const limits =
        sign === 1
          ? { lower: oneSided.lower, upper: oneSided.upper }
          : { lower: -oneSided.upper, upper: -oneSided.lower }
      const common = {
        n,
        mean,
        extra: sign * difference,
        se,
        df: found.df,
        sd: se * Math.sqrt(Math.max(1, n)),
      }
      return { ...common, ...limits, noSpread: false }
    },
  }
}
