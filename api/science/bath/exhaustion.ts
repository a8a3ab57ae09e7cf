import { type Percent, percent } from '#api/science/units.ts'

export type BathSample = {
  /** As measured, blank subtracted, same wavelength and cell at start and end; 0 or more. */
  readonly absorbance: number
  /** Parts that one part of bath was made up to before measuring: 1 undiluted, 10 for one in ten. */
  readonly dilution: number
  /** Of the whole bath, in any unit that both samples share. */
  readonly volume: number
}

/**
 * Share of the dye that the yarn has taken, from the absorbance of the bath before and after.
 *
 * E % = 100 (1 − A·d·V at the end ÷ A·d·V at the start); below 0 when more dye is in the bath than there was.
 * Absorbance goes with the amount of dye between about 0.1 and 1.0.
 *
 * @throws RangeError when the bath held no dye at the start.
 *
 * @example
 * const start = { absorbance: 0.842, dilution: 1, volume: 1 }
 * exhaustion(start, { absorbance: 0.126, dilution: 1, volume: 1 }) // 85.03563
 */
export function exhaustion(start: BathSample, end: BathSample): Percent {
  const before = start.absorbance * start.dilution * start.volume
  if (!(before > 0)) throw new RangeError('the bath needs some dye at the start')
  return percent(100 * (1 - (end.absorbance * end.dilution * end.volume) / before))
}
