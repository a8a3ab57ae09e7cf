import type { LadderRule, LadderVerdict, LevelRow } from './level-rows.ts'
import { type LevelResults, resultsAt } from './results-by-level.ts'

/** Spreads of two levels may differ by this factor before one spread for all levels misleads. */
export const mostUnequal = 3

/**
 * What a reader of a ladder must know beside its answer, as sentences.
 *
 * @example
 * const ladder = { steps: [], referenceLimits: [], method: 'pooled', reference: 75 }
 * ladderCautions(ladder, { rows: [], rule: { margin: 1 }, results: new Map() }) // ['No level below the reference was tried, so there is nothing to judge.']
 */
export function ladderCautions(
  it: Omit<LadderVerdict, 'cautions'>,
  {
    rows,
    rule,
    results,
  }: {
    readonly rows: readonly LevelRow[]
    readonly rule: LadderRule
    readonly results: ReadonlyMap<string, LevelResults>
  },
): string[] {
  const cautions: string[] = []
  const without = rows.filter((row) => row.value === undefined).length
  if (without > 0)
    cautions.push(
      `${without} ${without === 1 ? 'row has' : 'rows have'} no result and ${without === 1 ? 'is' : 'are'} left out.`,
    )
  if (it.steps.length === 0)
    cautions.push('No level below the reference was tried, so there is nothing to judge.')
  if (it.referenceLimits.some((limit) => limit.end === 'low' && limit.broken))
    cautions.push('The reference itself breaks a limit, so no level holds.')
  if (it.referenceLimits.some((limit) => limit.end === 'low' && limit.missing > 0))
    cautions.push('A side result of the reference was not recorded, so no level holds yet.')
  for (const step of it.steps) {
    if (step.noSpread) cautions.push(`Level ${step.level}: ${step.unavailable}`)
    for (const limit of step.limits)
      if (limit.missing > 0)
        cautions.push(`Level ${step.level}: ${limit.side} was not recorded in ${limit.missing} of its rows.`)
  }
  if (it.method === 'paired') {
    const reference = resultsAt(results, it.reference)
    const blocks = new Set([...results.values()].flatMap((level) => [...level.blocks.keys()]))
    const lacking = [...blocks].filter((block) => !reference.blocks.has(block)).length
    if (lacking > 0)
      cautions.push(
        `${lacking} ${lacking === 1 ? 'block does' : 'blocks do'} not hold the reference and cannot be compared.`,
      )
  }
  if (it.method === 'pooled' && rows.some((row) => row.block !== undefined))
    cautions.push('Blocks are taken as independent units here; what a block’s levels share is not taken off.')
  if (it.method !== 'paired' && spreadRatio(results) > mostUnequal)
    cautions.push(
      'The spread of some levels is more than 3 times that of others, and one spread is taken for all: look at the paired result.',
    )
  if (rule.noiseRms !== undefined && rule.noiseRms > rule.margin / 3)
    cautions.push('The noise of measuring is more than a third of the margin.')
  if (it.least !== undefined && 'unavailable' in it.window) cautions.push(it.window.unavailable)
  return cautions
}

/**
 * The largest SD of a level over the smallest, of levels with two units or more.
 *
 * @example
 * spreadRatio(new Map([['20', { vessels: [], blocks: new Map(), units: [1, 2] }], ['35', { vessels: [], blocks: new Map(), units: [1, 5] }]])) // 4
 */
export function spreadRatio(results: ReadonlyMap<string, LevelResults>): number {
  const spreads = [...results.values()].filter((it) => it.units.length > 1).map((it) => spreadOf(it.units))
  if (spreads.length < 2) return 1
  const [least, most] = [Math.min(...spreads), Math.max(...spreads)]
  return most === 0 ? 1 : most / least
}

function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1))
}
