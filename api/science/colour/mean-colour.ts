import { ciede2000 } from './ciede2000.ts'
import type { Lab } from './lab.ts'

/**
 * The colour of a skein from its readings: the means of L*, a* and b*. They come before any ΔE: a mean of
 * lengths keeps the noise that a length of means averages away.
 *
 * @throws RangeError without any reading
 *
 * @example
 * meanLab([{ L: 50, a: 2, b: -4 }, { L: 52, a: 4, b: -2 }]) // { L: 51, a: 3, b: -3 }
 */
export function meanLab(labs: readonly Lab[]): Lab {
  if (labs.length === 0) throw new RangeError('A mean colour needs at least one reading.')
  let L = 0
  let a = 0
  let b = 0
  for (const lab of labs) {
    L += lab.L
    a += lab.a
    b += lab.b
  }
  return { L: L / labs.length, a: a / labs.length, b: b / labs.length }
}

/**
 * How uneven a skein is: the mean ΔE00 of its places from their mean colour (MCDM). 0 for one place.
 *
 * @throws RangeError without any reading
 *
 * @example
 * mcdm([{ L: 49, a: 0, b: 0 }, { L: 51, a: 0, b: 0 }]) // 0.99917
 */
export function mcdm(labs: readonly Lab[]): number {
  const mean = meanLab(labs)
  let sum = 0
  for (const lab of labs) sum += ciede2000(mean, lab)
  return sum / labs.length
}
