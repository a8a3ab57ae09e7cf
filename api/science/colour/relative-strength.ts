import { absorptionOverScattering } from './kubelka-munk.ts'

/** Strength in percent of the standard's, at the wavelength where the standard absorbs most and over all. */
export type RelativeStrength = {
  readonly atMaximumPercent: number
  readonly overAllPercent: number
  /** Place of the standard's strongest wavelength in the list. */
  readonly maximumAt: number
}

/**
 * How strong a dyeing is against a standard, by K/S. Give the undyed yarn's reflectance for pale shades: its own
 * K/S is then taken off both.
 *
 * @throws RangeError when the lists differ in length, are empty, hold a 0 or less, or the standard has no dye in it
 *
 * @example
 * relativeStrength([0.4, 0.1], [0.32, 0.07]) // { atMaximumPercent: 152.54, maximumAt: 1 }
 */
export function relativeStrength(
  standard: readonly number[],
  batch: readonly number[],
  { undyed }: { undyed?: readonly number[] } = {},
): RelativeStrength {
  if (standard.length === 0 || standard.length !== batch.length || (undyed && undyed.length !== batch.length))
    throw new RangeError(
      'Standard, batch and undyed yarn are measured on the same wavelengths, one at least.',
    )
  const net = (reflectance: readonly number[]) =>
    reflectance.map((r, i) => finite(r) - (undyed ? finite(undyed[i]!) : 0))
  const [ksStandard, ksBatch] = [net(standard), net(batch)]
  const strongest = Math.max(...ksStandard)
  const overAll = sum(ksStandard)
  if (!(strongest > 0 && overAll > 0)) throw new RangeError('The standard absorbs no more than undyed yarn.')
  const maximumAt = ksStandard.indexOf(strongest)
  return {
    atMaximumPercent: (100 * ksBatch[maximumAt]!) / strongest,
    overAllPercent: (100 * sum(ksBatch)) / overAll,
    maximumAt,
  }
}

function finite(reflectance: number): number {
  if (reflectance === 0) throw new RangeError('A reflectance of 0 has no K/S.')
  return absorptionOverScattering(reflectance)
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
