import type { ModelSpec } from './model-spec.ts'

/** A term of a model: which factors and covariates it multiplies, by their places. The intercept has neither. */
export type Term = {
  readonly name: string
  readonly factors: readonly number[]
  readonly covariates: readonly number[]
}

/** More terms than this are no model that anybody could read. */
const mostTerms = 200

/**
 * The terms of a model after the intercept: factors in their order, covariates, then interactions from the simple to
 * the manifold. An interaction brings with it all that it is made of, so that its size does not hang on coding.
 *
 * @throws RangeError when the interactions make more than 200 terms
 *
 * @example
 * const spec = { response: 'dE', factors: ['fibre', 'steam'], interactions: [['steam', 'fibre']] }
 * termsOf(spec).map((it) => it.name) // ["fibre", "steam", "fibre:steam"]
 */
export function termsOf(spec: ModelSpec): Term[] {
  const names = [...(spec.factors ?? []), ...(spec.covariates ?? [])]
  const factors = spec.factors?.length ?? 0
  const sets = new Map<string, number[]>()
  const add = (places: readonly number[]) => {
    for (const part of partsOf(places)) {
      sets.set(part.join(), part)
      if (sets.size > mostTerms)
        throw new RangeError('these interactions make more terms than a model can take')
    }
  }
  for (let i = 0; i < names.length; i++) add([i])
  if (spec.interactions === 'all') {
    if (factors > 0) add(Array.from({ length: factors }, (_, i) => i))
  } else if (spec.interactions !== undefined && spec.interactions !== 'none') {
    for (const named of spec.interactions) {
      const places = [...new Set(named.map((name) => names.indexOf(name)))].sort((a, b) => a - b)
      if (places.length > 8) throw new RangeError('these interactions make more terms than a model can take')
      add(places)
    }
  }
  return [...sets.values()]
    .map((places, met) => ({ places, met }))
    .sort(
      (a, b) => a.places.length - b.places.length || (a.places.length === 1 ? inOrder(a, b) : a.met - b.met),
    )
    .map(({ places }) => ({
      name: places.map((place) => names[place]).join(':'),
      factors: places.filter((place) => place < factors),
      covariates: places.filter((place) => place >= factors).map((place) => place - factors),
    }))
}

const inOrder = (a: { places: number[] }, b: { places: number[] }) => a.places[0]! - b.places[0]!

/** Every subset of a few places but the empty one, small ones first, in order. */
function partsOf(places: readonly number[]): number[][] {
  let parts: number[][] = [[]]
  for (const place of places) parts = [...parts, ...parts.map((part) => [...part, place])]
  return parts.slice(1).sort((a, b) => a.length - b.length || compare(a, b))
}

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((place, i) => place !== b[i])
  return at < 0 ? 0 : a[at]! - b[at]!
}

/**
 * Whether one term holds another: `fibre:steam` holds `fibre`, and every term holds itself.
 *
 * @example
 * holdsTerm({ name: 'a:x', factors: [0], covariates: [0] }, { name: 'a', factors: [0], covariates: [] }) // true
 */
export function holdsTerm(outer: Term, inner: Term): boolean {
  return (
    inner.factors.every((it) => outer.factors.includes(it)) &&
    inner.covariates.every((it) => outer.covariates.includes(it))
  )
}
