import { intercept } from './design-matrix.ts'
import type { Coded } from './model-columns.ts'
import { isSwallowed } from './model-random.ts'
import { remlFit } from './reml.ts'
import { containmentDf } from './reml-containment.ts'
import { fixedEffects, satterthwaite } from './reml-degrees-of-freedom.ts'
import { type FixedPart, type Groups, remlSums } from './reml-sums.ts'

export type BlockRow = {
  readonly level: string
  readonly block: string
  /** Numbered anew in each block; two blocks may each have a vessel 1. */
  readonly vessel?: string | undefined
  readonly value: number
}

export type BlockDifference = { readonly extra: number; readonly se: number; readonly df: number }

export type ModelOfBlocks = {
  /** Of every level that can be judged against the reference: mean of the level less that of the reference. */
  readonly differences: ReadonlyMap<string, BlockDifference>
  readonly components: readonly { readonly group: 'block' | 'vessel'; readonly variance: number }[]
  /** Residual variance. */
  readonly residual: number
  readonly singular: boolean
  readonly cautions: readonly string[]
}

/**
 * Differences of all levels from a reference by one model: level fixed, block random, and vessel within block random
 * where a vessel holds more than one row. It uses incomplete blocks, and takes one spread for all levels. Degrees of
 * freedom by Satterthwaite; where a variance comes out as zero, by the units that a level was given to.
 *
 * @throws RangeError when a value is not a finite number
 *
 * @example
 * const rows = [
 *   { block: '1', level: '10', value: 3 }, { block: '1', level: '20', value: 2 },
 *   { block: '2', level: '10', value: 5 }, { block: '2', level: '20', value: 3 },
 *   { block: '3', level: '10', value: 7 }, { block: '3', level: '20', value: 6 },
 * ]
 * modelOfBlocks(rows, { reference: '20' }).differences.get('10') // { extra: 1.3333, se: 0.3333, df: 2 }
 */
export function modelOfBlocks(
  rows: readonly BlockRow[],
  { reference }: { readonly reference: string },
): ModelOfBlocks | { readonly unavailable: string } {
  if (!rows.every(({ value }) => Number.isFinite(value))) throw new RangeError('a value is a finite number')
  const level = coded('level', rows, (row) => row.level)
  const base = level.levels.indexOf(reference)
  if (base < 0) return { unavailable: 'No row has the reference.' }
  if (level.levels.length < 2) return { unavailable: 'There is no level beside the reference.' }
  const blocks = grouped(
    'block',
    coded('block', rows, (row) => row.block),
  )
  const vessels = grouped(
    'vessel',
    coded('vessel', rows, (row) =>
      row.vessel === undefined ? row.block : `${row.block.length}:${row.block}${row.vessel}`,
    ),
  )
  if (blocks.count < 2)
    return { unavailable: 'All rows are of one session, so sessions cannot be kept apart.' }
  if (blocks.count === rows.length)
    return { unavailable: 'Every session has one row only, so no two levels were seen in one session.' }
  const vesselsRepeat =
    vessels.count < rows.length &&
    vessels.count > blocks.count &&
    rows.some((row) => row.vessel !== undefined)
  const groups = vesselsRepeat ? [blocks, vessels] : [blocks]
  const fit = fitted(level, groups, rows)
  if ('unavailable' in fit) return fit

  const { covariance, df } = satterthwaite(fit.reml)
  const effects = fixedEffects(fit.reml, fit.effects)
  const differences = new Map<string, BlockDifference>()
  const byUnits = fit.reml.singular
    ? containmentDf(
        { terms: [intercept, levelTerm], factors: [level], covariates: [] },
        groups,
        fit.reml.sums,
      )[1]!
    : undefined
  level.levels.forEach((name, place) => {
    if (place === base) return
    const vector = new Float64Array(level.levels.length)
    vector[place] = 1 / Math.sqrt(fit.counts[place]!)
    vector[base] = -1 / Math.sqrt(fit.counts[base]!)
    const extra = (effects[place]! * vector[place]! + effects[base]! * vector[base]!) * fit.scale
    const se = Math.sqrt(covariance(vector, vector) * fit.reml.residual) * fit.scale
    const free = byUnits ?? df(vector)
    if (free !== undefined && free > 0 && se > 0) differences.set(name, { extra, se, df: free })
  })
  if (differences.size === 0)
    return {
      unavailable: 'No units are left over to judge the levels by: each is one session or vessel throughout.',
    }
  const variance = fit.reml.residual * fit.scale ** 2
  return {
    differences,
    components: groups.map(({ name }, i) => ({
      group: name as 'block' | 'vessel',
      variance: fit.reml.ratios[i]! * variance,
    })),
    residual: variance,
    singular: fit.reml.singular,
    cautions: groups.flatMap(({ name }, i) =>
      fit.reml.ratios[i] === 0
        ? [
            `No variation from ${name === 'block' ? 'session to session' : 'vessel to vessel'} could be seen; degrees of freedom are counted by the units that a level was given to.`,
          ]
        : [],
    ),
  }
}

const levelTerm = { name: 'level', factors: [0], covariates: [] }

function coded(name: string, rows: readonly BlockRow[], text: (row: BlockRow) => string): Coded {
  const places = new Map<string, number>()
  const codes = Int32Array.from(rows, (row) => {
    const key = text(row)
    const met = places.get(key)
    if (met !== undefined) return met
    places.set(key, places.size)
    return places.size - 1
  })
  return { name, levels: [...places.keys()], codes }
}

const grouped = (name: string, { codes, levels }: Coded): Groups => ({
  name,
  of: codes,
  count: levels.length,
})

/** With one factor alone the orthonormal directions are its levels, each over the root of its count. */
function fitted(level: Coded, groups: readonly Groups[], rows: readonly BlockRow[]) {
  const origin = rows[0]!.value
  const scale = rows.reduce((most, { value }) => Math.max(most, Math.abs(value - origin)), 0)
  if (scale === 0) return { unavailable: 'All values are the same, so there is no spread to judge by.' }
  if (!(scale < 1e150)) return { unavailable: 'The numbers are too large to be worked with.' }
  const rank = level.levels.length
  if (rows.length <= rank)
    return { unavailable: 'No level has more than one row, so there is no spread to judge by.' }
  const counts = new Float64Array(rank)
  const means = new Float64Array(rank)
  rows.forEach(({ value }, i) => {
    counts[level.codes[i]!]!++
    means[level.codes[i]!]! += (value - origin) / scale
  })
  for (let k = 0; k < rank; k++) means[k]! /= counts[k]!
  const atCell = new Float64Array(rank * rank)
  for (let k = 0; k < rank; k++) atCell[k * rank + k] = 1 / Math.sqrt(counts[k]!)
  const residuals = Float64Array.from(
    rows,
    ({ value }, i) => (value - origin) / scale - means[level.codes[i]!]!,
  )
  const rounding = 4e-16 * Math.max(1, Math.abs(origin) / scale) + 2e-15
  if (residuals.every((it) => Math.abs(it) <= 4 * rounding))
    return { unavailable: 'All rows of a level are the same, so there is no spread to judge by.' }
  const fixed: FixedPart = { rows: rows.length, rank, cellOf: level.codes, atCell, residuals }
  if (groups.some((it) => isSwallowed(it, fixed)))
    return { unavailable: 'Each level is one session or vessel throughout, so the two cannot be told apart.' }
  const reml = remlFit(remlSums(fixed, groups))
  if ('unavailable' in reml) return reml
  return { reml, counts, scale, effects: means.map((mean, k) => mean * Math.sqrt(counts[k]!)) }
}
