import type { Lab } from './lab.ts'

/**
 * Colours in one row of numbers, L* a* b* L* a* b* …: the form that the functions ending in `All` take, for
 * hundreds of thousands of colours.
 *
 * @example
 * [...labTriples([{ L: 50, a: 1, b: 2 }, { L: 60, a: 3, b: 4 }])] // [50, 1, 2, 60, 3, 4]
 */
export function labTriples(labs: readonly Lab[]): Float64Array {
  const triples = new Float64Array(labs.length * 3)
  let at = 0
  for (const { L, a, b } of labs) {
    triples[at] = L
    triples[at + 1] = a
    triples[at + 2] = b
    at += 3
  }
  return triples
}

/**
 * How many pairs two rows of triples hold.
 *
 * @throws RangeError when they differ in length or do not come in threes
 *
 * @example
 * pairsIn(new Float64Array(6), new Float64Array(6)) // 2
 */
export function pairsIn(reference: Float64Array, sample: Float64Array): number {
  if (reference.length !== sample.length || reference.length % 3 !== 0)
    throw new RangeError('References and samples come in equal numbers, three values each.')
  return reference.length / 3
}
