import { doubtOf, refusalOf } from '#api/contract/bounds.ts'
import { aceticInBath, alkalinityInMoles, citricInBath } from '#api/science/bath/acid-in-bath.ts'
import { vinegarForCitric } from '#api/science/bath/acid-swap.ts'
import { perHundredGrams, vinegarEquivalent } from '#api/science/bath/vinegar-equivalent.ts'
import { kitchenUnitCalled } from '#api/science/recipe/kitchen-unit-called.ts'
import {
  type Grams,
  grams,
  type Millilitres,
  type MolesPerLitre,
  milligramsPerLitre,
  molesPerLitre,
  percent,
} from '#api/science/units.ts'
import { type AcidAdded, type AcidRequest, mostMolPerL } from './acid-request.ts'
import { type Measured, refuseAt, volumeOf, weightOf } from './measured.ts'

export type MeasuredBath = {
  readonly acetic: MolesPerLitre
  readonly citric: MolesPerLitre
  readonly alkalinity: MolesPerLitre
  /** mL of 5 % vinegar for 100 g of fibre, citric acid counted by its acid; only with the fibre's weight. */
  readonly vinegarPer100g?: number
  readonly cautions: string[]
}

/** What the acids that were measured out come to in the bath, each amount refused at its own place. */
export function measuredBath(acids: readonly AcidAdded[], bath: Measured, body: AcidRequest): MeasuredBath {
  const volume = volumeOf(bath, ['bath'])
  const noBath = refusalOf('bathVolume', volume / 1000)
  if (noBath) refuseAt(['bath', 'amount'], noBath)
  const fibre = body.fibre && fibreOf(body.fibre)
  const added = acids.map((acid, place) => oneAcid(acid, volume, fibre, ['acids', place]))
  const sum = (part: 'acetic' | 'citric' | 'vinegar' | 'liquid') =>
    added.reduce((total, it) => total + it[part], 0)
  const [acetic, citric] = [sum('acetic'), sum('citric')]
  if (acetic > mostMolPerL || citric > mostMolPerL)
    refuseAt(['acids'], 'This is more acid than a litre can hold: look at the amounts and the bath.')
  const cautions = added.flatMap((it) => (it.doubt ? [it.doubt] : []))
  if (sum('liquid') > volume * (1 + 1e-9))
    cautions.push('The bath is the whole liquor, vinegar included; here it is less than the vinegar in it.')
  if (body.alkalinity === undefined)
    cautions.push('The alkalinity of the water is not given: it is taken as 0 mg/L.')
  const inBath = {
    acetic: molesPerLitre(acetic),
    citric: molesPerLitre(citric),
    alkalinity: alkalinityInMoles(milligramsPerLitre(body.alkalinity ?? 0)),
  }
  if (fibre === undefined) return { ...inBath, cautions }
  const vinegarPer100g = perHundredGrams(sum('vinegar'), fibre)
  if (citric > 0)
    cautions.push('Citric acid is counted as the vinegar that carries as much acid; its pH is not the same.')
  const doubt = doubtOf('acid', vinegarPer100g)
  if (doubt) cautions.push(doubt)
  return { ...inBath, vinegarPer100g, cautions }
}

type OneAcid = {
  readonly acetic: number
  readonly citric: number
  readonly vinegar: number
  readonly liquid: number
  readonly doubt?: string | undefined
}

function oneAcid(acid: AcidAdded, bath: Millilitres, fibre: Grams | undefined, path: PropertyKey[]): OneAcid {
  if (acid.kind === 'acetic') {
    const strength = percent(acid.strengthPercent ?? 5)
    const refused = refusalOf('acidStrength', strength)
    if (refused) refuseAt([...path, 'strengthPercent'], refused)
    const volume = volumeOf(acid, path)
    const vinegar = vinegarEquivalent(volume, strength)
    if (fibre !== undefined) refuseTooMuch('acid', perHundredGrams(vinegar, fibre), path)
    const doubt = doubtOf('acidStrength', strength)
    return { acetic: aceticInBath(volume, strength, bath), citric: 0, vinegar, liquid: volume, doubt }
  }
  const weight = citricOf(acid, path)
  if (fibre !== undefined) refuseTooMuch('citric', perHundredGrams(weight, fibre), path)
  const vinegar = vinegarForCitric(weight, acid.kind, percent(5))
  return { acetic: 0, citric: citricInBath(weight, acid.kind, bath), vinegar, liquid: 0 }
}

/** Citric acid is weighed; a solution of known strength may be measured, and holds that many grams in 100 mL. */
function citricOf(acid: AcidAdded, path: PropertyKey[]): Grams {
  const { strengthPercent = 100, unit } = acid
  const called = kitchenUnitCalled(unit)
  const isSolution =
    acid.strengthPercent !== undefined && called.kind === 'unit' && called.unit.kind === 'volume'
  const whole = isSolution ? volumeOf(acid, path) : weightOf(acid, path)
  return grams((whole * strengthPercent) / 100)
}

function refuseTooMuch(key: 'acid' | 'citric', perHundred: number, path: PropertyKey[]): void {
  const refused = refusalOf(key, perHundred)
  if (refused) refuseAt([...path, 'amount'], refused)
}

function fibreOf(fibre: Measured): Grams {
  const weight = weightOf(fibre, ['fibre'])
  const refused = refusalOf('fibreMass', weight)
  if (refused) refuseAt(['fibre', 'amount'], refused)
  return weight
}
