import { boilingPoint } from '#api/science/bath/boiling-point.ts'
import { metres } from '#api/science/units.ts'
import { doubtOf, variableKeys } from './bounds.ts'
import { type Conditions, numberOf } from './condition-value.ts'
import { degrees } from './degrees.ts'
import { type Fault, pointerTo } from './problem.ts'

/**
 * The questions that possible but unlikely values raise, each at its place (“… Keep it?”).
 *
 * @example
 * doubtsAbout({ acid: 150 }) // [{ pointer: '#/acid', detail: 'Vinegar 150 mL per 100 g is three times the usual. Keep it?' }]
 */
export function doubtsAbout(conditions: Conditions): Fault[] {
  const doubts: Fault[] = []
  for (const key of variableKeys) {
    const value = numberOf(conditions, key)
    const doubt = value === undefined ? undefined : doubtOf(key, value)
    if (doubt) doubts.push({ pointer: pointerTo([key]), detail: doubt })
  }
  return doubts
}

/**
 * What does not agree within one set of conditions, merged from all the places they come from.
 *
 * Faults are impossible together: hotter than boiling in an open pot, or stock and dye more than 20 % apart.
 * Doubts are unlikely together. What is not recorded is not checked; a blank altitude is taken as the sea's.
 *
 * @example
 * crossChecks({ peakTemp: 99, altitude: 3000 }).faults // [{ pointer: '#/peakTemp', detail: 'Water boils at 90 °C (194 °F) at this altitude: 99 °C (210 °F) needs a vessel made for pressure, used by its manual. Never a closed jar or pot.' }]
 */
export function crossChecks(conditions: Conditions): { faults: Fault[]; doubts: Fault[] } {
  const found = [boiling(conditions), ...stockAgainstDye(conditions), ...withinReason(conditions)]
  const of = (kind: Found['kind']) =>
    found
      .filter((it) => it?.kind === kind)
      .map((it) => ({ pointer: it?.pointer ?? '#', detail: it?.detail ?? '' }))
  return { faults: of('fault'), doubts: of('doubt') }
}

type Found = Fault & { readonly kind: 'fault' | 'doubt' }

function boiling(conditions: Conditions): Found | undefined {
  const peak = numberOf(conditions, 'peakTemp')
  if (peak === undefined || conditions.pressureVessel === true) return undefined
  const altitude = numberOf(conditions, 'altitude')
  const boils = boilingPoint(metres(altitude ?? 0))
  if (peak <= boils + 1) return undefined
  const where = altitude === undefined ? '' : ' at this altitude'
  return {
    kind: 'fault',
    pointer: '#/peakTemp',
    detail: `Water boils at ${degrees(Math.round(boils))}${where}: ${degrees(peak)} needs a vessel made for pressure, used by its manual. Never a closed jar or pot.`,
  }
}

/** The dye by its weight, and by the stock that was measured out: more than 20 % apart cannot be, 5 % is asked. */
function stockAgainstDye(conditions: Conditions): Found[] {
  const dye = numberOf(conditions, 'dyeMass')
  const volume = numberOf(conditions, 'stockVolume')
  const strength = numberOf(conditions, 'stockStrength')
  if (dye === undefined || volume === undefined || strength === undefined) return []
  const inStock = (volume * strength) / 100
  const off = apart(inStock, dye)
  if (off <= 5) return []
  const said = `The stock holds ${short(inStock)} g of dye, the dye is given as ${short(dye)} g`
  if (off <= 20) return [{ kind: 'doubt', pointer: '#/dyeMass', detail: `${said}. Keep both?` }]
  return [{ kind: 'fault', pointer: '#/dyeMass', detail: `${said}: more than 20 % apart. Mend one of them.` }]
}

/** How far one is from another, in per cent of the other; rounded, so that 5 % of decimal fractions is 5. */
function apart(one: number, other: number): number {
  if (one === other) return 0
  return Number(((100 * Math.abs(one - other)) / Math.abs(other)).toPrecision(9))
}

function short(value: number): number {
  return Number(value.toPrecision(3))
}

function withinReason(conditions: Conditions): Found[] {
  const found: Found[] = []
  const doubt = (key: string, detail: string) =>
    found.push({ kind: 'doubt', pointer: pointerTo([key]), detail })
  const depth = numberOf(conditions, 'depth')
  const noAcid = numberOf(conditions, 'acid') === 0 && (numberOf(conditions, 'citric') ?? 0) === 0
  if (numberOf(conditions, 'clarity') === 5 && depth !== undefined && depth > 1.5 && noAcid)
    doubt('clarity', 'Clear rinse water at a deep shade without acid is unlikely. Keep it?')
  const bath = numberOf(conditions, 'bathVolume')
  const fibre = numberOf(conditions, 'fibreMass')
  const ratio = numberOf(conditions, 'liquorRatio')
  if (bath !== undefined && fibre !== undefined && ratio !== undefined) {
    const wanted = (fibre * ratio) / 1000
    if (apart(bath, wanted) > 5)
      doubt('bathVolume', `${fibre} g at ${ratio} mL/g is ${short(wanted)} L. Keep both?`)
  }
  const dye = numberOf(conditions, 'dyeMass')
  if (dye !== undefined && fibre !== undefined && depth !== undefined) {
    const wanted = (fibre * depth) / 100
    if (apart(dye, wanted) > 5)
      doubt('dyeMass', `${fibre} g at ${depth} % is ${short(wanted)} g of dye. Keep both?`)
  }
  const start = numberOf(conditions, 'startTemp')
  const peak = numberOf(conditions, 'peakTemp')
  if (start !== undefined && peak !== undefined && start > peak)
    doubt('startTemp', 'The bath starts hotter than its peak. Keep it?')
  return found
}
