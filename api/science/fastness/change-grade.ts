import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { chroma, hue, type Lab } from '#api/science/colour/lab.ts'
import { type Grade, grades } from './grades.ts'

/** A difference on the scale of a formula, its unrounded rating held within 1–5, and the grade by bands. */
export type Grading = { readonly difference: number; readonly rating: number; readonly grade: Grade }

/** Upper ends of ΔE_F for grades 5, 4-5 … 1-2; at an end the lower grade holds. */
const upperEnds = [0.4, 1.25, 2.1, 2.95, 4.1, 5.8, 8.2, 11.6]

/**
 * The grey-scale grade for a change in colour, calculated from CIELAB (A05 formula): ΔE_F, rating and grade.
 * The grade goes by bands of ΔE_F and is not the nearest half of the rating: 0.41 rates 4.76 and is a 4-5.
 *
 * Source: ISO 105-A05. Its terms D, x, C_M, h_M and the factors 10 and 20 stand here from memory of the
 * standard; the bands are midpoints of the published visual scale.
 *
 * @example
 * changeGrade({ L: 45, a: 25, b: -7 }, { L: 47, a: 22, b: -6 }) // { difference: 3.241, rating: 3.09, grade: '3' }
 */
export function changeGrade(reference: Lab, sample: Lab): Grading {
  const difference = greyScaleDifference(reference, sample)
  return { difference, rating: ratingOf(difference), grade: gradeOf(difference) }
}

/**
 * ΔE_F: the colour difference of the grey scale for change in colour.
 *
 * @example
 * greyScaleDifference({ L: 55, a: -38, b: -28 }, { L: 58, a: -33, b: -25 }) // 4.441
 */
export function greyScaleDifference(reference: Lab, sample: Lab): number {
  const { dL, dC, dH } = cielabDifference(reference, sample)
  const meanC = (chroma(reference) + chroma(sample)) / 2
  const fromBlue = Math.abs(meanHue(hue(reference), hue(sample)) - 280)
  const x = ((fromBlue <= 180 ? fromBlue : 360 - fromBlue) / 30) ** 2
  const d = (dC * meanC * Math.exp(-x)) / 100
  const dCF = (dC - d) / (1 + (meanC / 50) ** 2)
  const dHF = (dH - d) / (1 + (meanC / 100) ** 2)
  return Math.sqrt(dL * dL + dCF * dCF + dHF * dHF)
}

function meanHue(h1: number, h2: number): number {
  const sum = h1 + h2
  if (Math.abs(h2 - h1) <= 180) return sum / 2
  return sum < 360 ? sum / 2 + 180 : sum / 2 - 180
}

function ratingOf(difference: number): number {
  const rating = difference <= 3.4 ? 5 - difference / 1.7 : 5 - Math.log2(difference / 0.85)
  return Math.max(1, rating)
}

function gradeOf(difference: number): Grade {
  // 40.4 − 40 is 0.39999… in the machine and 0.40 on paper: a rounding must not decide a grade.
  const band = upperEnds.findIndex((end) => difference < end - 1e-9)
  return grades[band < 0 ? 8 : band] as Grade
}
