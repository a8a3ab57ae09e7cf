import type { Lab } from '#api/science/colour/lab.ts'
import type { Grading } from './change-grade.ts'
import { type Grade, grades } from './grades.ts'

/** Lower ends of the rating for grades 5, 4-5 … 1-2. */
const lowerEnds = [4.75, 4.25, 3.75, 3.25, 2.75, 2.25, 1.75, 1.25]

/**
 * The grey-scale grade for staining of a companion cloth, calculated from CIELAB (A04 formula). The reference is
 * the same cloth unstained, washed the same way. The grade goes by bands of the rating rounded to two decimals.
 *
 * Source: ISO 105-A04; constants from memory, checked against the published visual scale, which they give back.
 *
 * @example
 * stainingGrade({ L: 93, a: 0, b: 3 }, { L: 85, a: -4, b: -3 }) // { rating: 3.11, grade: '3' }
 */
export function stainingGrade(reference: Lab, sample: Lab): Grading {
  const dL = sample.L - reference.L
  const da = sample.a - reference.a
  const db = sample.b - reference.b
  // √(ΔE² − ΔL²) is the distance in a* and b*; taken directly it loses no digits.
  const offLightness = Math.sqrt(da * da + db * db)
  const difference = Math.sqrt(dL * dL + da * da + db * db) - 0.4 * offLightness
  const rating = ratingOf(difference)
  return { difference, rating, grade: gradeOf(rating) }
}

function ratingOf(difference: number): number {
  if (difference === 0) return 5
  const dark = 6.1 - 1.45 * Math.log(difference)
  return Math.max(1, dark > 4 ? 5 - 0.23 * difference : dark)
}

function gradeOf(rating: number): Grade {
  // The second rounding takes off what the machine leaves behind the second decimal of 4.245 × 100.
  const rounded = Math.round(Number((rating * 100).toFixed(9))) / 100
  const band = lowerEnds.findIndex((end) => rounded >= end)
  return grades[band < 0 ? 8 : band] as Grade
}
