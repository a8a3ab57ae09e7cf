/**
 * Loadings λ whose products λᵢλⱼ are the given correlations, or nothing where there are none: what Dunnett's distribution
 * needs. Two comparisons always have them, three nearly always (λ₁² = ρ₁₂ρ₁₃ ÷ ρ₂₃), more in balanced designs only.
 *
 * @example
 * sharedLoadings([[1, 0.42, 0.35], [0.42, 1, 0.3], [0.35, 0.3, 1]]) // [0.7, 0.6, 0.5]
 */
export function sharedLoadings(correlations: readonly (readonly number[])[]): number[] | undefined {
  const size = correlations.length
  const at = (i: number, k: number) => correlations[i]![k]!
  const loadings = correlations.map((_, i) => {
    if (size === 2) return Math.sqrt(at(0, 1))
    const [k, m] = [0, 1, 2].filter((it) => it !== i) as [number, number]
    return Math.sqrt((at(i, k) * at(i, m)) / at(k, m))
  })
  const fits = loadings.every((mine, i) =>
    loadings.every((other, k) => k >= i || Math.abs(mine * other - at(i, k)) <= 1e-9),
  )
  // Rounded, so that comparisons that share as much have one loading.
  const rounded = loadings.map((it) => Number(it.toFixed(12)))
  return fits && rounded.every((it) => it > 0 && it < 0.9999) ? rounded : undefined
}
