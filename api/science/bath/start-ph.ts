import type { MolesPerLitre } from '#api/science/units.ts'
import { acetic, carbonic, citric, waterPKw } from './acids.ts'

export type BathAcids = { readonly acetic?: MolesPerLitre; readonly citric?: MolesPerLitre }

export type StartPh = {
  /** The cold bath, with the water's carbonate still in it. */
  readonly cold: number
  /** The same with its carbon dioxide driven off by heat. */
  readonly heated: number
  /** Heated, it would read above 7: too little acid for this water, whatever it reads cold. */
  readonly notAcid: boolean
}

/**
 * What the bath reads before the yarn goes in, worked out from charge balance; an estimate to one decimal.
 *
 * Alkalinity A + [H⁺] − Kw/[H⁺] = what the acids have given up, carbonic acid of total A among them while it is
 * still in the bath. The left side less the right rises with [H⁺], so halving the bracket finds the one answer.
 * Constants are those of 25 °C without salt; wool binds acid, and the pH climbs 0.5 to 1.5 once it is in.
 *
 * @param acids       mol/L in the whole bath, 0 or more.
 * @param alkalinity  mol/L of bicarbonate in the whole bath, 0 or more.
 *
 * @throws RangeError for an amount below 0 or not finite.
 *
 * @example
 * startPh({ acetic: 0.003122 }, 0.005) // { cold: 6.17, notAcid: true }
 */
export function startPh(acids: BathAcids, alkalinity: MolesPerLitre): StartPh {
  const { acetic: vinegar = 0, citric: citrus = 0 } = acids
  for (const amount of [vinegar, citrus, alkalinity]) {
    if (!Number.isFinite(amount) || amount < 0)
      throw new RangeError('acid and alkalinity are 0 mol/L or more')
  }
  const inBath: Dissolved[] = [
    { amount: vinegar, pKa: acetic.pKa },
    { amount: citrus, pKa: citric.pKa },
  ]
  const heated = balancedPh(inBath, alkalinity)
  const cold = balancedPh([...inBath, { amount: alkalinity, pKa: carbonic.pKa }], alkalinity)
  return { cold, heated, notAcid: heated > 7 }
}

type Dissolved = { readonly amount: number; readonly pKa: readonly number[] }

function balancedPh(acids: readonly Dissolved[], alkalinity: number): number {
  let low = -1
  let high = 15
  for (let step = 0; step < 60; step++) {
    const pH = (low + high) / 2
    const hydrogen = 10 ** -pH
    let charge = alkalinity + hydrogen - 10 ** (pH - waterPKw)
    for (const acid of acids) charge -= acid.amount * givenUp(acid.pKa, pH)
    if (charge > 0) low = pH
    else high = pH
  }
  return (low + high) / 2
}

/** Hydrogen ions that one molecule has given up, on average, at a pH. */
function givenUp(pKa: readonly number[], pH: number): number {
  let form = 1
  let all = 1
  let lost = 0
  pKa.forEach((constant, place) => {
    form *= 10 ** (pH - constant)
    all += form
    lost += (place + 1) * form
  })
  return lost / all
}
