import type { Grade } from './grades.ts'

/** One pair of chips: its grade and how far apart the two are, in ΔE*ab (not ΔE00). */
export type GreyScaleStep = { readonly grade: Grade; readonly dE76: number; readonly tolerance: number }

/**
 * The grey scale for change in colour, as looked at beside the yarn: a neutral grey against lighter greys.
 *
 * Source: ISO 105-A02:1993, clause 2.4.
 */
export const changeSteps: readonly GreyScaleStep[] = [
  { grade: '5', dE76: 0, tolerance: 0.2 },
  { grade: '4-5', dE76: 0.8, tolerance: 0.2 },
  { grade: '4', dE76: 1.7, tolerance: 0.3 },
  { grade: '3-4', dE76: 2.5, tolerance: 0.35 },
  { grade: '3', dE76: 3.4, tolerance: 0.4 },
  { grade: '2-3', dE76: 4.8, tolerance: 0.5 },
  { grade: '2', dE76: 6.8, tolerance: 0.6 },
  { grade: '1-2', dE76: 9.6, tolerance: 0.7 },
  { grade: '1', dE76: 13.6, tolerance: 1 },
]

/**
 * The grey scale for staining: white against greyer whites.
 *
 * Source: ISO 105-A03:1993, from memory, in keeping with the A04 formula within 0.02 of a grade.
 */
export const stainingSteps: readonly GreyScaleStep[] = [
  { grade: '5', dE76: 0, tolerance: 0.2 },
  { grade: '4-5', dE76: 2.2, tolerance: 0.3 },
  { grade: '4', dE76: 4.3, tolerance: 0.3 },
  { grade: '3-4', dE76: 6, tolerance: 0.4 },
  { grade: '3', dE76: 8.5, tolerance: 0.5 },
  { grade: '2-3', dE76: 12, tolerance: 0.7 },
  { grade: '2', dE76: 16.9, tolerance: 1 },
  { grade: '1-2', dE76: 24, tolerance: 1.5 },
  { grade: '1', dE76: 34.1, tolerance: 2 },
]
