import type { Lab } from './lab.ts'
import type { Xyz } from './white-points.ts'

const epsilon = 216 / 24389
const kappa = 24389 / 27

/**
 * CIE L*a*b* of tristimulus values under a white on the same scale.
 *
 * Source: ISO/CIE 11664-4.
 *
 * @example
 * xyzToLab([0.21623527, 0.13969725, 0.04806718], [0.9504559, 1, 1.0890578]) // { L: 44.1895, a: 45.7979, b: 33.0951 }
 */
export function xyzToLab(xyz: Xyz, white: Xyz): Lab {
  const x = compress(xyz[0] / white[0])
  const y = compress(xyz[1] / white[1])
  const z = compress(xyz[2] / white[2])
  return { L: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) }
}

/**
 * The cube root of the L*a*b* scale, straight below its bend.
 *
 * @example
 * [compress(0.125), compress(0)] // [0.5, 0.13793]
 */
export function compress(ratio: number): number {
  return ratio > epsilon ? Math.cbrt(ratio) : (kappa * ratio + 16) / 116
}
