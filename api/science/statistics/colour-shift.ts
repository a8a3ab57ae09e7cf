import { ciede2000 } from '../colour/ciede2000.ts'
import type { Lab } from '../colour/lab.ts'
import { mcdm, meanLab } from '../colour/mean-colour.ts'
import { type HotellingAnswer, hotelling, simultaneousReach } from './hotelling.ts'
import { oneSample } from './one-sample.ts'
import { isUnavailable, type Unavailable } from './unavailable.ts'

type Three<Value> = { readonly dL: Value; readonly da: Value; readonly db: Value }
export type Limits = readonly [number, number]

export type ColourShift = {
  readonly mean: Three<number>
  readonly dE00OfMeans: number
  readonly meanOfDE00: number
  readonly hotelling: HotellingAnswer
  readonly intervals: Three<Limits | Unavailable>
  readonly simultaneous: Three<Limits | Unavailable>
  readonly mcdm: { readonly before: number; readonly after: number }
}

/**
 * How a colour moved, one pair of readings a unit: signed differences with their limits, tested all together by T².
 * ΔE is a length, so noise alone makes its mean positive; the signed differences do not suffer from that.
 *
 * `intervals` hold each by itself, `simultaneous` all three at once.
 *
 * @throws RangeError when there is no pair, or the lists are of unequal length
 *
 * @example
 * const at = (L) => ({ L, a: 0, b: 0 })
 * colourShift([at(50), at(52)], [at(53), at(55)]).mean // { dL: 3, da: 0, db: 0 }
 */
export function colourShift(
  before: readonly Lab[],
  after: readonly Lab[],
  { level = 0.95 }: { readonly level?: number } = {},
): ColourShift {
  if (before.length !== after.length) throw new RangeError('each colour before has one after')
  const n = before.length
  const differences = (channel: keyof Lab) =>
    after.map((lab, i) => lab[channel] - (before[i]?.[channel] ?? 0))
  const columns = { dL: differences('L'), da: differences('a'), db: differences('b') }
  // Readings are numbers up to 128: what is less than rounding makes of them is no difference.
  const samples = each((name) => oneSample(columns[name], { level, scale: 128 }))
  const equal = Object.values(samples).some((sample) => isUnavailable(sample))
  const T2: HotellingAnswer =
    equal && n > 3
      ? { unavailable: 'In one direction all differences are equal, so there is no spread to judge by.' }
      : hotelling([columns.dL, columns.da, columns.db])
  return {
    mean: each((name) => samples[name].mean),
    dE00OfMeans: ciede2000(meanLab(before), meanLab(after)),
    meanOfDE00: before.reduce((sum, lab, i) => sum + ciede2000(lab, after[i] ?? lab), 0) / n,
    hotelling: T2,
    intervals: each((name) => {
      const sample = samples[name]
      return isUnavailable(sample) ? { unavailable: sample.unavailable } : [sample.lower, sample.upper]
    }),
    simultaneous: each((name) => {
      const sample = samples[name]
      if (isUnavailable(T2)) return T2
      if (isUnavailable(sample)) return { unavailable: sample.unavailable }
      const reach = simultaneousReach(n, 3, { level }) * sample.se
      return [sample.mean - reach, sample.mean + reach]
    }),
    mcdm: { before: mcdm(before), after: mcdm(after) },
  }
}

function each<Value>(of: (name: keyof Three<unknown>) => Value): Three<Value> {
  return { dL: of('dL'), da: of('da'), db: of('db') }
}
