import { acid } from './acid.ts'
import { amounts } from './amounts.ts'
import type { Calculation } from './calculation.ts'
import { colourDifference } from './colour-difference.ts'
import { colourShift } from './colour-shift.ts'
import { distribution } from './distribution.ts'
import { exhaustion } from './exhaustion.ts'
import { fastnessGrade } from './fastness-grade.ts'
import { groups } from './groups.ts'
import { leastLevel } from './least-level.ts'
import { lightGrade } from './light-grade.ts'
import { model } from './model.ts'
import { noise } from './noise.ts'
import { paletteDistance } from './palette-distance.ts'
import { pixel } from './pixel.ts'
import { sampleSize } from './sample-size.ts'
import { saturation } from './saturation.ts'
import { slope } from './slope.ts'
import { spectrum } from './spectrum.ts'
import { twoSamples } from './two-samples.ts'

/** Every computing address. Add a calculation here and it is served, documented and tried with wrong bodies. */
export const calculations: readonly Calculation[] = [
  acid,
  amounts,
  exhaustion,
  leastLevel,
  colourDifference,
  fastnessGrade,
  lightGrade,
  model,
  noise,
  paletteDistance,
  pixel,
  spectrum,
  groups,
  twoSamples,
  colourShift,
  slope,
  saturation,
  sampleSize,
  distribution,
]
