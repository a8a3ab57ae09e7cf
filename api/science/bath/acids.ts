/**
 * Acids of the dye pot, and of its water, at 25 °C and zero ionic strength.
 *
 * pKa: NIST Standard Reference Database 46 (as 46.2/46.4 in the minteq.v4 database of USGS PHREEQC).
 * Molar masses: IUPAC atomic weights. Vinegar's strength is grams of acetic acid in 100 mL, as labels have it.
 */
export const acetic = { molarMass: 60.052, pKa: [4.757] } as const
export const citric = { molarMass: 192.124, pKa: [3.128, 4.761, 6.396] } as const
export const citricMonohydrate = { molarMass: 210.139, pKa: citric.pKa } as const
export const carbonic = { pKa: [6.352, 10.329] } as const
export const waterPKw = 13.997

/** Milligrams of calcium carbonate that neutralise as much acid as one mole of bicarbonate. */
export const alkalinityPerMole = 50_040
