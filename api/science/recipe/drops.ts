import { type Millilitres, millilitres } from '#api/science/units.ts'

/** From common practice: droppers differ, and so do hands. */
const dropSize = { usual: 0.05, least: 0.03, most: 0.07 } as const

/**
 * What a number of drops comes to, and between which limits, in mL.
 *
 * @param count  Whole, 0 or more.
 *
 * @example
 * volumeOfDrops(20) // { usual: 1, least: 0.6, most: 1.4 }
 */
export function volumeOfDrops(count: number): { usual: Millilitres; least: Millilitres; most: Millilitres } {
  return {
    usual: millilitres(count * dropSize.usual),
    least: millilitres(count * dropSize.least),
    most: millilitres(count * dropSize.most),
  }
}

/**
 * Drops to count out for a volume, to the nearest whole one.
 *
 * @example
 * dropsFor(0.4) // 8
 */
export function dropsFor(volume: Millilitres): number {
  return Math.round(volume / dropSize.usual)
}
