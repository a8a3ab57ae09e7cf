import type { Unavailable } from './unavailable.ts'

export type NestedComponents = {
  /** Between repeats of one occasion. */
  readonly within: { readonly meanSquare: number; readonly df: number; readonly variance: number }
  /** Between occasions of one thing. Its variance is 0 where the mean square is the smaller one. */
  readonly between: { readonly meanSquare: number; readonly df: number; readonly variance: number }
  /** Repeats of an occasion, on average: the weight of the variance between occasions in its mean square. */
  readonly size: number
}

/**
 * Where the scatter of things read again comes from: repeats within an occasion, and occasions within a thing. By mean
 * squares (nested analysis of variance); with equal numbers the same as REML wherever no variance comes out as 0. What
 * things themselves differ by is not in it.
 *
 * Source: Searle, Casella & McCulloch (1992), Variance Components, sections 3.6 and 5.2.
 *
 * @param things  Each a list of occasions, each a list of values.
 *
 * @example
 * nestedComponents([[[5, 5.2], [5.6, 5.4]], [[8, 8.2], [7.6, 7.8]]]) // { within: { meanSquare: 0.02, df: 4 }, between: { meanSquare: 0.16, df: 2, variance: 0.07 }, size: 2 }
 */
export function nestedComponents(
  things: readonly (readonly (readonly number[])[])[],
): NestedComponents | Unavailable {
  const within = { squares: 0, df: 0 }
  const between = { squares: 0, df: 0 }
  let all = 0
  let shared = 0
  for (const occasions of things) {
    const values = occasions.flat()
    if (values.length === 0) continue
    const mean = meanOf(values)
    for (const occasion of occasions) {
      if (occasion.length === 0) continue
      const own = meanOf(occasion)
      for (const value of occasion) within.squares += (value - own) ** 2
      within.df += occasion.length - 1
      between.squares += occasion.length * (own - mean) ** 2
      between.df += 1
      shared += occasion.length ** 2 / values.length
    }
    between.df -= 1
    all += values.length
  }
  if (between.df < 1) return { unavailable: 'Nothing was read on two occasions.' }
  const size = (all - shared) / between.df
  const repeat = within.df > 0 ? within.squares / within.df : 0
  const occasion = between.squares / between.df
  return {
    within: { meanSquare: repeat, df: within.df, variance: repeat },
    between: { meanSquare: occasion, df: between.df, variance: Math.max(0, (occasion - repeat) / size) },
    size,
  }
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
