import type { Lab } from './lab.ts'
import type { Xyz } from './white-points.ts'

const kappa = 24389 / 27

/**
 * Tristimulus values of a colour, on the scale of the white that is given (the default of this folder is Y = 1).
 *
 * Source: ISO/CIE 11664-4.
 *
 * @example
 * labToXyz({ L: 100, a: 0, b: 0 }, [0.95, 1, 1.09]) // [0.95, 1, 1.09]
 */
export function labToXyz(lab: Lab, white: Xyz): Xyz {
  const y = (lab.L + 16) / 116
  return [
    white[0] * cube(y + lab.a / 500),
    white[1] * (lab.L > 8 ? y ** 3 : lab.L / kappa),
    white[2] * cube(y - lab.b / 200),
  ]
}

// Below the bend of the scale the curve is a straight line, which goes on below zero.
function cube(f: number): number {
  return f > 6 / 29 ? f ** 3 : (116 * f - 16) / kappa
}
