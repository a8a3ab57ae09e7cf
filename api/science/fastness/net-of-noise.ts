/**
 * A colour change with the noise of measuring taken off: sign(v² − r²)·√|v² − r²|. A length is never negative, so
 * noise alone makes an unchanged skein look changed; `noise` is the root mean square ΔE00 of unchanged skeins read
 * alike. Below 0: less than noise alone would show.
 *
 * @throws RangeError for a negative or non-finite noise
 *
 * @example
 * netOfNoise(0.5, 0.3) // 0.4
 * @example
 * netOfNoise(0.3, 0.5) // -0.4
 */
export function netOfNoise(value: number, noise: number): number {
  if (!(noise >= 0) || noise === Number.POSITIVE_INFINITY)
    throw new RangeError('Noise is a length, 0 or more.')
  const squared = (value - noise) * (value + noise)
  return Math.sign(squared) * Math.sqrt(Math.abs(squared))
}
