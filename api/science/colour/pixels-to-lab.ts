import { compressQuickly } from './compress-quickly.ts'
import { D50, D65, type Xyz } from './white-points.ts'

export type PixelSpace = 'srgb' | 'display-p3'
export type PixelWhite = 'D50' | 'D65'

type Matrix = readonly [Xyz, Xyz, Xyz]

// Derived from the primaries of BT.709 and Display P3 with the white D65.
const toXyz: Readonly<Record<PixelSpace, Matrix>> = {
  srgb: [
    [0.412390799266, 0.357584339384, 0.180480788402],
    [0.212639005872, 0.715168678768, 0.072192315361],
    [0.019330818716, 0.119194779795, 0.95053215225],
  ],
  'display-p3': [
    [0.486570948648, 0.265667693169, 0.198217285234],
    [0.22897456407, 0.691738521837, 0.079286914094],
    [0, 0.045113381859, 1.043944368901],
  ],
}

// Bradford's adaptation from D65 to D50.
const toD50: Matrix = [
  [1.047929792545, 0.022946870602, -0.050192266289],
  [0.02962780877, 0.990434426754, -0.017073799063],
  [-0.009243040646, 0.01505519149, 0.751874281428],
]

/** Light of each 8-bit value, 0–1: sRGB and Display P3 share the curve. */
const light = Float64Array.from({ length: 256 }, (_, value) => {
  const encoded = value / 255
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4
})

/**
 * L*a*b* of many 8-bit pixels, r g b r g b …, as triples. `channels: 4` reads a canvas, r g b and a fourth that is
 * passed over. Numbers are whole, 0–255. Relative to the white named: D65 as screens have it, or D50 by Bradford.
 *
 * Source: IEC 61966-2-1 for the curve; ISO/CIE 11664-4 for L*a*b*.
 *
 * @throws RangeError when the numbers do not come in threes (fours)
 *
 * @example
 * [...pixelsToLab([181, 66, 52])] // [44.18948, 45.79794, 33.09507]
 */
export function pixelsToLab(
  pixels: ArrayLike<number>,
  {
    space = 'srgb',
    white = 'D65',
    channels = 3,
  }: { space?: PixelSpace; white?: PixelWhite; channels?: 3 | 4 } = {},
): Float64Array {
  if (pixels.length % channels !== 0) throw new RangeError(`A pixel has ${channels} numbers.`)
  const matrix = white === 'D50' ? product(toD50, toXyz[space]) : toXyz[space]
  const [n0, n1, n2] = white === 'D50' ? D50 : D65
  // Divided by the white at once: what comes out is X/Xn, Y/Yn, Z/Zn.
  const [[xr, xg, xb], [yr, yg, yb], [zr, zg, zb]] = [
    scaled(matrix[0], n0),
    scaled(matrix[1], n1),
    scaled(matrix[2], n2),
  ]
  const labs = new Float64Array((pixels.length / channels) * 3)
  for (let at = 0, to = 0; at < pixels.length; at += channels, to += 3) {
    const r = light[pixels[at]!]!
    const g = light[pixels[at + 1]!]!
    const b = light[pixels[at + 2]!]!
    const x = compressQuickly(xr * r + xg * g + xb * b)
    const y = compressQuickly(yr * r + yg * g + yb * b)
    const z = compressQuickly(zr * r + zg * g + zb * b)
    labs[to] = 116 * y - 16
    labs[to + 1] = 500 * (x - y)
    labs[to + 2] = 200 * (y - z)
  }
  return labs
}

/**
 * Whether a pixel is too dark or too bright in a channel to be measured: 5 or less, 250 or more.
 *
 * @example
 * isClipped(5, 128, 128) // true
 */
export function isClipped(r: number, g: number, b: number): boolean {
  return Math.min(r, g, b) <= 5 || Math.max(r, g, b) >= 250
}

function scaled(row: Xyz, by: number): Xyz {
  return [row[0] / by, row[1] / by, row[2] / by]
}

function product(left: Matrix, right: Matrix): Matrix {
  const cell = (row: Xyz, i: 0 | 1 | 2) => row[0] * right[0][i] + row[1] * right[1][i] + row[2] * right[2][i]
  const row = (of: Xyz): Xyz => [cell(of, 0), cell(of, 1), cell(of, 2)]
  return [row(left[0]), row(left[1]), row(left[2])]
}
