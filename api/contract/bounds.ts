import { type Bounds, boundsTable, type Doubtful } from './bounds-table.ts'
import { degrees, degreesBetween } from './degrees.ts'

export type VariableKey = keyof typeof boundsTable

/** Every variable with its bounds, in the order of work. */
export const bounds: Readonly<Record<VariableKey, Bounds>> = boundsTable

/** The keys of all variables, in the order of work. */
export const variableKeys = Object.keys(boundsTable) as readonly VariableKey[]

/**
 * Whether a name is one of the table of variables.
 *
 * @example
 * [isVariable('steamTime'), isVariable('toString')] // [true, false]
 */
export function isVariable(key: string): key is VariableKey {
  return Object.hasOwn(boundsTable, key)
}

export type Refusal = { readonly detail: string; readonly suggestion?: number }

/**
 * Why a value cannot be kept, with the value that was probably meant: the decimal point moved so that it
 * lands in what is usual. Undefined when the value is possible.
 *
 * @param value  In the unit of the table.
 *
 * @example
 * refusal('steamTime', 3500) // { detail: 'Steam time 3500 min is outside 0–480 min. Did you mean 35?', suggestion: 35 }
 */
export function refusal(key: VariableKey, value: number): Refusal | undefined {
  const it = bounds[key]
  const said = saidAs(it, value)
  if (!Number.isFinite(value)) return { detail: `${it.label} is a number.` }
  if (isOutside(it, value)) {
    const suggestion = probablyMeant(it, value)
    const detail = `${said} is outside ${rangeOf(key)}.`
    const more = it.whenTooMuch && value > it.impossible.above ? ` ${it.whenTooMuch(value)}` : ''
    if (suggestion === undefined) return { detail: `${detail}${more}` }
    return { detail: `${detail} Did you mean ${inFigures(suggestion)}?${more}`, suggestion }
  }
  if (it.step === 'whole' && !Number.isInteger(value)) return { detail: `${said}: this is a whole number.` }
  if (it.step === 'halves' && !Number.isInteger(value * 2))
    return { detail: `${said}: this goes in halves, such as ${halfNear(value)}.` }
  return undefined
}

/**
 * The sentence of a refusal alone, or undefined when the value is possible.
 *
 * @example
 * refusalOf('fibreMass', 0) // 'Fibre weight 0 g is outside the range more than 0, up to 20000 g.'
 */
export function refusalOf(key: VariableKey, value: number): string | undefined {
  return refusal(key, value)?.detail
}

/**
 * What is impossible to leave, in words.
 *
 * @example
 * [rangeOf('steamTime'), rangeOf('altitude'), rangeOf('clarity')] // ['0–480 min', '−450 to 5500 m', '1–5']
 */
export function rangeOf(key: VariableKey): string {
  const { impossible: no, unit } = bounds[key]
  if (no.belowExclusive) return withUnit(`the range more than ${no.below}, up to ${no.above}`, unit)
  return spanWithUnit(no.below, no.above, unit)
}

/**
 * The question that a possible but unlikely value raises, or undefined. An impossible value raises none:
 * it is refused.
 *
 * @example
 * doubtOf('acid', 150) // 'Vinegar 150 mL per 100 g is three times the usual. Keep it?'
 */
export function doubtOf(key: VariableKey, value: number): string | undefined {
  const it = bounds[key]
  if (refusal(key, value) || !isDoubtful(it.doubtful, value)) return undefined
  const because = it.because === undefined || value <= (it.becauseOver ?? -Infinity) ? '' : `; ${it.because}`
  return `${saidAs(it, value)} is ${compared(it, value)}${because}. Keep it?`
}

function isOutside({ impossible: no }: Bounds, value: number): boolean {
  return value > no.above || value < no.below || (no.belowExclusive === true && value === no.below)
}

function isDoubtful(doubt: Doubtful | undefined, value: number): boolean {
  if (!doubt || (doubt.zeroIsFine && value === 0)) return false
  const { under = -Infinity, over: above = Infinity, atMost = -Infinity, atLeast = Infinity } = doubt
  if (value < under || value > above || value <= atMost || value >= atLeast) return true
  return doubt.exactly === value || (doubt.otherThan !== undefined && doubt.otherThan !== value)
}

function probablyMeant(it: Bounds, value: number): number | undefined {
  const [low, high] = it.usual ?? [it.impossible.below, it.impossible.above]
  // A lost decimal point first, then one put too far left, then a stray sign.
  for (const factor of [0.1, 0.01, 0.001, 10, 100, 1000, -1]) {
    const meant = Number((value * factor).toPrecision(12))
    if (meant < low || meant > high || isOutside(it, meant)) continue
    if (it.step === 'whole' && !Number.isInteger(meant)) continue
    if (it.step === 'halves' && !Number.isInteger(meant * 2)) continue
    return meant
  }
  return undefined
}

const timesInWords = ['', '', 'twice', 'three times', 'four times', 'five times', 'six times', 'seven times']

/** “1.5 times”, “twice”, “12 times”: to one decimal below ten, so that one and a half is not said as two. */
function timesAs(ratio: number): string {
  const times = ratio < 10 ? Math.round(ratio * 10) / 10 : Math.round(ratio)
  return timesInWords[times] ?? `${times} times`
}

function compared(it: Bounds, value: number): string {
  if (!it.usual) return 'unusual'
  const [low, high] = it.usual
  // Twice a temperature, a pH or a colour coordinate says nothing; twice a weight or a time does.
  const isRatio = low >= 0 && it.unit !== '' && it.unit !== '°C'
  const ratio = value / (it.typical ?? high)
  if (isRatio && ratio >= 1.5)
    return it.typical
      ? `${timesAs(ratio)} the usual`
      : `${timesAs(ratio)} the usual ${spanWithUnit(low, high, it.unit)}`
  if (high === it.impossible.above && value < low)
    return `below the usual ${withUnit(inFigures(low), it.unit)} or more`
  if (low === high) return `not the usual ${withUnit(inFigures(low), it.unit)}`
  return `${value > high ? 'above' : 'below'} the usual ${spanWithUnit(low, high, it.unit)}`
}

function saidAs(it: Bounds, value: number): string {
  if (it.unit === '°C' && Number.isFinite(value)) return `${it.label} ${degrees(value)}`
  return `${it.label} ${withUnit(inFigures(value), it.unit)}`
}

function span(low: number, high: number): string {
  return low < 0 ? `${inFigures(low)} to ${inFigures(high)}` : `${inFigures(low)}–${inFigures(high)}`
}

function spanWithUnit(low: number, high: number, unit: string): string {
  return unit === '°C' ? degreesBetween(low, high) : withUnit(span(low, high), unit)
}

function withUnit(figures: string, unit: string): string {
  return unit === '' ? figures : `${figures} ${unit}`
}

function inFigures(value: number): string {
  return String(Number(value.toPrecision(12))).replace('-', '−')
}

function halfNear(value: number): string {
  return inFigures(Math.round(value * 2) / 2)
}
