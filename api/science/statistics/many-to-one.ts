import { inDirections, type LinearModel, linearModel } from './linear-model.ts'
import { type ControlFamily, controlFamily, product } from './many-to-one-family.ts'
import { ifFinite, type Unavailable } from './unavailable.ts'

export type ArmRow = {
  readonly arm: string
  /** Session, card or parent within which arms are compared; where no row has one, the arms are compared one-way. */
  readonly block?: string | undefined
  readonly value: number
}

/** One arm against the control. `difference` is arm − control, in the unit of the values. */
export type ArmAgainstControl = {
  readonly arm: string
  /** Rows of the arm. */
  readonly n: number
  readonly difference: number
  readonly se: number
  readonly t: number
  /** Simultaneous two-sided limits. */
  readonly lower: number
  readonly upper: number
  /** Simultaneous one-sided limits: each end with the whole confidence on its side. */
  readonly oneSided: { readonly lower: number; readonly upper: number }
  /** Adjusted: two-sided, for “above the control” and for “below the control”. */
  readonly p: number
  readonly pAbove: number
  readonly pBelow: number
}

/** Said where every value of an arm is the same once its block is taken off. */
export const noSpreadAtAll = 'There is no spread at all: were values copied or rounded?'

export type ManyToOne = {
  readonly comparisons: readonly ArmAgainstControl[]
  readonly df: number
  /** Residual variance of the block + arm model. */
  readonly residual: number
  readonly adjusted: ControlFamily['adjusted']
  readonly critical: ControlFamily['critical']
  /** Arms that the rows cannot hold against the control. */
  readonly without: readonly string[]
}

/**
 * Every arm against one control by a linear model of block + arm with one spread; the limits hold for the whole family
 * at once. By Dunnett where the correlations of the comparisons are products of loadings (one-way, complete blocks, up to
 * three arms with cells missing), else by Bonferroni. Cells may be missing, and may hold several rows.
 *
 * Sources: Dunnett (1955), J. Am. Stat. Assoc. 50, 1096–1121; Hsu (1996), Multiple Comparisons, sections 3.1 and 7.2.
 *
 * @throws RangeError when a value is not finite, or some rows have a block and others have none
 *
 * @example
 * const rows = [
 *   { block: '1', arm: 'a', value: 3 }, { block: '1', arm: 'now', value: 2 },
 *   { block: '2', arm: 'a', value: 5 }, { block: '2', arm: 'now', value: 3 },
 *   { block: '3', arm: 'a', value: 7 }, { block: '3', arm: 'now', value: 6 },
 * ]
 * manyToOne(rows, { control: 'now', confidence: 0.95 }) // { df: 2, adjusted: 'none', comparisons: [{ arm: 'a', n: 3, difference: 1.3333, se: 0.3333, t: 4, p: 0.0572 }] }
 */
export function manyToOne(
  rows: readonly ArmRow[],
  { control, confidence }: { readonly control: string; readonly confidence: number },
): ManyToOne | Unavailable {
  if (!rows.every(({ value }) => Number.isFinite(value))) throw new RangeError('a value is a finite number')
  const blocked = rows.filter(({ block }) => block !== undefined).length
  if (blocked !== 0 && blocked !== rows.length) throw new RangeError('either every row has a block or none')
  const arms = [...new Set([control, ...rows.map(({ arm }) => arm)])]
  if (!rows.some(({ arm }) => arm === control)) return { unavailable: 'No row has the control.' }
  if (arms.length < 2) return { unavailable: 'There is no arm beside the control.' }
  const model = blockAndArm(rows, arms, blocked > 0)
  if (model.residualDf < 1) return { unavailable: 'No rows are left over to judge the spread by.' }
  if (model.exact) return { unavailable: noSpreadAtAll }
  const residual = model.residualSquares / model.residualDf
  const asked = arms.slice(1).map((arm) => ({ arm, vector: differenceOf(model, arms, arm) }))
  const told = asked.flatMap(({ arm, vector }) => (vector ? [{ arm, vector }] : []))
  if (told.length === 0) return { unavailable: 'No arm was seen in one block with the control.' }
  const family = controlFamily(
    told.map(({ vector }) => vector),
    model.residualDf,
    confidence,
  )
  const comparisons: ArmAgainstControl[] = []
  for (const { arm, vector } of told) {
    const difference = product(model.effects, vector) * model.scale
    const se = Math.sqrt(residual * product(vector, vector)) * model.scale
    const t = difference / se
    const [one, two] = [family.critical.oneSided * se, family.critical.twoSided * se]
    const comparison = ifFinite({
      arm,
      n: rows.filter((row) => row.arm === arm).length,
      difference,
      se,
      t,
      lower: difference - two,
      upper: difference + two,
      oneSided: { lower: difference - one, upper: difference + one },
      p: family.tail(Math.abs(t), 2),
      pAbove: family.tail(t, 1),
      pBelow: family.tail(-t, 1),
    })
    if ('unavailable' in comparison) return comparison
    comparisons.push(comparison)
  }
  return {
    comparisons,
    df: model.residualDf,
    residual: residual * model.scale ** 2,
    adjusted: family.adjusted,
    critical: family.critical,
    without: asked.flatMap(({ arm, vector }) => (vector ? [] : [arm])),
  }
}

/** The arms stand last and the control first among them, so that the coefficients are the differences from it. */
function blockAndArm(rows: readonly ArmRow[], arms: readonly string[], blocked: boolean): LinearModel {
  const blocks = [...new Set(rows.map(({ block }) => block ?? ''))]
  const arm = { name: 'arm', levels: arms, codes: Int32Array.from(rows, (row) => arms.indexOf(row.arm)) }
  const block = {
    name: 'block',
    levels: blocks,
    codes: Int32Array.from(rows, (row) => blocks.indexOf(row.block ?? '')),
  }
  const factors = blocked ? [block, arm] : [arm]
  const terms = factors.map(({ name }, i) => ({ name, factors: [i], covariates: [] }))
  return linearModel(
    { terms, factors, covariates: [] },
    Float64Array.from(rows, ({ value }) => value),
  )
}

/** The direction of an arm’s difference from the control; none where the rows cannot tell it from the blocks. */
function differenceOf(model: LinearModel, arms: readonly string[], arm: string): Float64Array | undefined {
  const factor = model.factors.length - 1
  const level = arms.indexOf(arm)
  const weights = Float64Array.from(model.columns, ({ levels }) => (levels.get(factor) === level ? 1 : 0))
  const vector = inDirections(model, weights)
  return vector?.some((it) => it !== 0) ? vector : undefined
}
