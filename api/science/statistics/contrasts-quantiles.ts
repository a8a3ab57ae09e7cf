/**
 * A critical value for many contrasts whose degrees of freedom differ a little, as they do in a mixed model. Critical
 * values are slow to find and smooth in 1/df: up to `few` different ones are worked out each; beyond that, at Chebyshev
 * nodes between the least and the greatest, the rest by interpolation (checked to 1e-7).
 *
 * @example
 * quantileByDf((df) => 2 + 1 / df, [4, 5, 8])(5) // 2.2
 */
export function quantileByDf(
  quantile: (df: number) => number,
  dfs: readonly number[],
  few = 14,
): (df: number) => number {
  const known = new Map<number, number>()
  const exactly = (df: number) => {
    const met = known.get(df) ?? quantile(df)
    known.set(df, met)
    return met
  }
  if (new Set(dfs).size <= few) return exactly
  const low = 1 / Math.max(...dfs)
  const high = 1 / Math.min(...dfs)
  const nodes = Array.from({ length: few }, (_, i) => {
    const angle = ((2 * i + 1) * Math.PI) / (2 * few)
    const at = (low + high) / 2 + ((high - low) / 2) * Math.cos(angle)
    // Barycentric weights of Chebyshev nodes of the first kind.
    return { at, weight: (i % 2 === 0 ? 1 : -1) * Math.sin(angle), value: quantile(1 / at) }
  })
  return (df) => {
    let top = 0
    let bottom = 0
    for (const { at, weight, value } of nodes) {
      const apart = 1 / df - at
      if (apart === 0) return value
      top += (weight / apart) * value
      bottom += weight / apart
    }
    return top / bottom
  }
}
