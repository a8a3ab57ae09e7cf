/** Tristimulus values, Y of the perfect white 1 unless said. */
export type Xyz = readonly [X: number, Y: number, Z: number]

/** D65, 2°, from the chromaticity (0.3127, 0.3290) of sRGB and Display P3. */
export const D65: Xyz = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329]

/** D50, 2°, from the chromaticity (0.3457, 0.3585) as in CSS Color 4. */
export const D50: Xyz = [0.3457 / 0.3585, 1, (1 - 0.3457 - 0.3585) / 0.3585]
