/**
 * K/S of an opaque layer from its reflectance: how much it absorbs against how much it scatters. It grows about in
 * step with the dye in the yarn. Infinite for a reflectance of 0.
 *
 * Source: Kubelka and Munk (1931): (1 − R)² ÷ 2R.
 *
 * @throws RangeError when the reflectance is not within 0–1
 *
 * @example
 * absorptionOverScattering(0.2) // 1.6
 */
export function absorptionOverScattering(reflectance: number): number {
  if (!(reflectance >= 0 && reflectance <= 1))
    throw new RangeError(`A reflectance is within 0–1; ${reflectance} was given.`)
  return (1 - reflectance) ** 2 / (2 * reflectance)
}

/**
 * The reflectance that belongs to a K/S: 1 + K − √(K² + 2K), written so that a small one keeps its digits.
 *
 * @throws RangeError for a K/S below 0
 *
 * @example
 * reflectanceOf(1.6) // 0.2
 */
export function reflectanceOf(ks: number): number {
  if (!(ks >= 0)) throw new RangeError(`K/S is 0 or more; ${ks} was given.`)
  return 1 / (1 + ks + Math.sqrt(ks * (ks + 2)))
}
