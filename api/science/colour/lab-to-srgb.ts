import type { Lab } from './lab.ts'
import { labToXyz } from './lab-to-xyz.ts'
import { D65 } from './white-points.ts'

export type ScreenColour = {
  readonly r: number
  readonly g: number
  readonly b: number
  /** As in CSS: `#b54234`. */
  readonly hex: string
  /** False when a screen of the sRGB kind cannot show the colour; r, g and b are then its nearest edge. */
  readonly inGamut: boolean
}

// Half an 8-bit step at the dark end: what rounding of printed L*a*b* may do to a colour on the very edge.
const edge = 0.5 / 255 / 12.92

/**
 * How a colour is shown on a screen: sRGB, whole numbers 0–255. L*a*b* is taken under D65.
 *
 * Source: IEC 61966-2-1; the matrix derived from its primaries.
 *
 * @example
 * labToSrgb({ L: 44.18948, a: 45.79794, b: 33.09507 }) // { r: 181, g: 66, b: 52, hex: '#b54234', inGamut: true }
 */
export function labToSrgb(lab: Lab): ScreenColour {
  const [x, y, z] = labToXyz(lab, D65)
  const linear = [
    3.240969941905 * x - 1.53738317757 * y - 0.498610760293 * z,
    -0.969243636281 * x + 1.875967501508 * y + 0.041555057407 * z,
    0.055630079697 * x - 0.203976958889 * y + 1.056971514243 * z,
  ] as const
  const [r, g, b] = [eightBit(linear[0]), eightBit(linear[1]), eightBit(linear[2])]
  const hex = `#${[r, g, b].map((channel) => channel.toString(16).padStart(2, '0')).join('')}`
  return { r, g, b, hex, inGamut: linear.every((channel) => channel >= -edge && channel <= 1 + edge) }
}

function eightBit(linear: number): number {
  const held = Math.min(1, Math.max(0, linear))
  const encoded = held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055
  return Math.round(255 * encoded)
}
