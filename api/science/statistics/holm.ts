/**
 * P-values of a family held together by the step-down method of Holm (1979), Scand. J. Stat. 6, 65–70: the
 * chance of even one false find stays below the level, whatever ties the tests have. The order is kept.
 *
 * @example
 * holm([0.01, 0.04, 0.03]) // [0.03, 0.06, 0.06]
 */
export function holm(ps: readonly number[]): number[] {
  const rising = ps.map((p, place) => ({ p, place })).sort((one, other) => one.p - other.p)
  const adjusted = new Array<number>(ps.length)
  let highest = 0
  for (const [rank, { p, place }] of rising.entries()) {
    highest = Math.max(highest, Math.min(1, p * (ps.length - rank)))
    adjusted[place] = highest
  }
  return adjusted
}
