import { compress } from './xyz-to-lab.ts'

const epsilon = 216 / 24389
const kappa = 24389 / 27
const last = 1.01
const pieces = 1024
const piecesPerUnit = pieces / (last - epsilon)

/** Cube roots at the ends of the pieces. */
const roots = Float64Array.from({ length: pieces + 2 }, (_, i) => Math.cbrt(epsilon + i / piecesPerUnit))

/**
 * `compress` for millions of pixels, several times as fast and equal to it within 1e-11. A straight line between
 * two cube roots is within 4e-4 of the one asked for; one step of Halley's method cubes that error.
 *
 * @example
 * compressQuickly(0.125) // 0.5
 */
export function compressQuickly(ratio: number): number {
  if (!(ratio > epsilon)) return (kappa * ratio + 16) / 116
  if (ratio >= last) return compress(ratio)
  const place = (ratio - epsilon) * piecesPerUnit
  const piece = place | 0
  const low = roots[piece]!
  const guess = low + (place - piece) * (roots[piece + 1]! - low)
  const cube = guess * guess * guess
  return (guess * (cube + 2 * ratio)) / (2 * cube + ratio)
}
