import { chiSquaredQuantile } from '#api/science/statistics/chi-squared.ts'

/** Mean squared ΔE00 of unchanged skeins read alike, from one source, and how many degrees of freedom it has. */
export type NoiseSource = { readonly meanSquare: number; readonly df: number }

export type PooledNoise = { readonly rms: number; readonly upperRms: number; readonly df: number }

/** Share of the doubt that the upper limit leaves: a higher limit does not protect more (see the example's source). */
const below = 0.2

/**
 * Sources with the same parts of error, weighed by their degrees of freedom, with the one-sided 80 % upper limit
 * r·√(df ÷ χ²(0.2; df)). Undefined where nothing is known, or where no spread was seen at all.
 *
 * @param sources  Mean squares in ΔE00², each 0 or more; a source with 0 degrees of freedom adds nothing.
 * @see ISO 5725-2 (pooling of variances); Snedecor & Cochran, Statistical Methods, section 5.10 (limits of a variance).
 *
 * @example
 * // A twin read again four times against one first reading: 0.2, 0.4, 0.3, 0.3.
 * pooledNoise([sourceOfDifferences([0.2, 0.4, 0.3, 0.3])]) // { rms: 0.308, upperRms: 0.419, df: 6.86 }
 */
export function pooledNoise(sources: readonly NoiseSource[]): PooledNoise | undefined {
  const df = sources.reduce((sum, it) => sum + it.df, 0)
  const squares = sources.reduce((sum, it) => sum + it.df * it.meanSquare, 0)
  if (!(df > 0) || !(squares > 0)) return undefined
  const rms = Math.sqrt(squares / df)
  return { rms, upperRms: upperLimitOf(rms, df), df }
}

/**
 * The one-sided 80 % upper limit of a root mean square.
 *
 * @example
 * upperLimitOf(0.187616630392937, 21) // 0.21877239863373
 */
export function upperLimitOf(rms: number, df: number): number {
  return rms * Math.sqrt(df / chiSquaredQuantile(below, df))
}

/**
 * Differences of one unchanged skein from one and the same first reading. They share its error, so k of them have
 * 3·4k ÷ (k + 3) degrees of freedom and not 3k (Satterthwaite, three axes).
 *
 * @example
 * sourceOfDifferences([0.2, 0.4, 0.3, 0.3]) // { meanSquare: 0.095, df: 6.857142857142857 }
 */
export function sourceOfDifferences(differences: readonly number[]): NoiseSource {
  const k = differences.length
  if (k === 0) return { meanSquare: 0, df: 0 }
  return {
    meanSquare: differences.reduce((sum, it) => sum + it * it, 0) / k,
    df: (3 * 4 * k) / (k + 3),
  }
}
