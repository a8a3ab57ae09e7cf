import { type LinearModel, type LinearModelParts, linearModel } from './linear-model.ts'
import type { Judge } from './model-judge.ts'
import { confoundedTerms, fixedPartOf, isSwallowed, type RandomPart } from './model-random.ts'
import { type RemlFit, remlFit } from './reml.ts'
import { containmentDf, isConstantIn } from './reml-containment.ts'
import { fixedEffects, satterthwaite } from './reml-degrees-of-freedom.ts'
import { type Groups, remlSums } from './reml-sums.ts'

/** A model with its judge. `random` is there when random intercepts are part of it. */
export type FittedModel = {
  readonly model: LinearModel
  readonly judge: Judge
  readonly cautions: readonly string[]
  readonly confounded: readonly string[]
  readonly random?: {
    readonly part: RandomPart
    /** Nothing when every random intercept is swallowed by the fixed terms, or REML has no answer. */
    readonly fit?: RemlFit
    /** Scaled residual variance. */
    readonly residual?: number
    /** −2 × restricted log likelihood of the response as it came. */
    readonly criterion?: number
  }
}

/**
 * Fits fixed and random parts and says by what they are judged.
 *
 * @example
 * const pot = { name: 'pot', of: Int32Array.of(0, 0, 1, 1), count: 2 }
 * const parts = { terms: [], factors: [], covariates: [] }
 * const { random } = modelFit(parts, Float64Array.of(1, 2, 4, 5), { kept: [pot], cautions: [] })
 * random.fit.ratios // [8.5]
 */
export function modelFit(
  parts: LinearModelParts,
  response: Float64Array,
  { kept, cautions }: Omit<RandomPart, 'swallowed'>,
): FittedModel {
  const model = linearModel(parts, response)
  const nothing = whyNothing(model)
  const spread = model.residualSquares / model.residualDf
  const byLeastSquares: Judge = {
    effects: model.effects,
    covariance: (a, b) => spread * product(a, b),
    df: () => model.residualDf,
    spread,
    unjudged: new Map(),
    nothing,
  }
  if (kept.length === 0) return { model, judge: byLeastSquares, cautions, confounded: [] }

  const fixed = fixedPartOf(model)
  const swallowed = kept.filter((it) => isSwallowed(it, fixed))
  const groups = kept.filter((it) => !swallowed.includes(it))
  const confounded = confoundedTerms(model, kept)
  const unjudged = unjudgedTerms(model, swallowed, confounded)
  const names = [...confounded.keys()].map((place) => model.all[place]!.name)
  const part: RandomPart = { kept: groups, swallowed, cautions }
  const withoutFit = (judge: Judge, own: readonly string[] = []): FittedModel => ({
    model,
    judge,
    cautions: [...cautions, ...own],
    confounded: names,
    random: {
      part,
      ...(judge.nothing === undefined ? { residual: spread, criterion: criterionOf(model, spread, 0) } : {}),
    },
  })
  if (nothing !== undefined) return withoutFit({ ...byLeastSquares, unjudged })
  if (groups.length === 0) return withoutFit({ ...byLeastSquares, unjudged })
  const sums = remlSums(fixed, groups)
  const fit = remlFit(sums)
  if ('unavailable' in fit) return withoutFit({ ...byLeastSquares, unjudged, nothing: fit.unavailable })
  const { covariance, df } = satterthwaite(fit)
  let byUnits: number[] | undefined
  const judge: Judge = {
    effects: fixedEffects(fit, model.effects),
    covariance: (a, b) => fit.residual * covariance(a, b),
    df: (vector, terms) => {
      if (!fit.singular) {
        return (
          df(vector) ?? {
            unavailable: 'The variances are too uncertain to say how many degrees of freedom there are.',
          }
        )
      }
      byUnits ??= containmentDf({ ...parts, terms: model.all }, groups, sums)
      const least = Math.min(...terms.map((term) => byUnits![term]!))
      return least > 0 ? least : { unavailable: 'No units are left over to judge this by.' }
    },
    unjudged,
  }
  const zero = groups.filter((_, i) => fit.ratios[i] === 0).map((it) => it.name)
  return {
    model,
    judge,
    confounded: names,
    cautions: [
      ...cautions,
      ...zero.map(
        (name) =>
          `No variation from ${name} to ${name} could be seen; degrees of freedom are counted by the units that a term was given to.`,
      ),
    ],
    random: {
      part,
      fit,
      residual: fit.residual,
      criterion: criterionOf(model, fit.residual, fit.at.logDeterminants),
    },
  }
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum
}

function whyNothing(model: LinearModel): string | undefined {
  if (model.rows === 1) return 'One row alone has no spread to judge by.'
  if (model.residualDf <= 0) return 'There are as many coefficients as rows, so nothing is left to judge by.'
  if (model.scale === 0) return 'The response is the same in every row, so there is no spread to judge by.'
  if (model.exact)
    return 'The model meets every row exactly, so there is no spread to judge by. Were values copied or rounded?'
  return undefined
}

/** What never varies within the groups of a swallowed random intercept cannot be judged: its units are these groups. */
function unjudgedTerms(
  model: LinearModel,
  swallowed: readonly Groups[],
  confounded: ReadonlyMap<number, string>,
): Map<number, string> {
  const unjudged = new Map<number, string>()
  model.all.forEach((term, place) => {
    const own = confounded.get(place)
    const group = swallowed.find((it) => isConstantIn(it, term, model))
    if (own !== undefined)
      unjudged.set(
        place,
        `Each level of ${term.name} is one ${own} throughout, so the two cannot be told apart.`,
      )
    else if (group)
      unjudged.set(
        place,
        `No ${group.name} is left over to judge this by: the terms take up every one of them.`,
      )
  })
  return unjudged
}

function criterionOf(model: LinearModel, residual: number, logDeterminants: number): number {
  const free = model.residualDf
  return (
    free * (1 + Math.log(2 * Math.PI) + Math.log(residual) + 2 * Math.log(model.scale)) +
    logDeterminants +
    model.logDeterminant
  )
}
