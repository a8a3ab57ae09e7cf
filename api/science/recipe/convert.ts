import { kitchenUnitCalled } from './kitchen-unit-called.ts'

type Measure = {
  /** What it measures: `volume`, `mass/volume` …; only alike can be converted. */
  readonly kind: string
  readonly size: number
  /** Added before multiplying, for scales whose zero is elsewhere. */
  readonly zero?: number
}

const time = (size: number): Measure => ({ kind: 'time', size })
const length = (size: number): Measure => ({ kind: 'length', size })
const light = (size: number): Measure => ({ kind: 'light', size })
const dose = (size: number): Measure => ({ kind: 'light dose', size })
const hardness = (size: number): Measure => ({ kind: 'mass/volume', size: size * 1e-6 })

/**
 * Measures beside those of the kitchen. Base units: min, m, °C, lx, lx·h, W, gf, g, mL.
 *
 * Degrees of hardness as mg/L of calcium carbonate: German 17.848 (10 mg CaO/L), French 10, English 14.254,
 * milliequivalents 50.04; from memory of water handbooks. 1 N = 101.97 gf. 1 foot-candle = 10.764 lx.
 */
const others: Readonly<Record<string, Measure>> = {
  drop: { kind: 'volume', size: 0.05 },
  s: time(1 / 60),
  sec: time(1 / 60),
  second: time(1 / 60),
  min: time(1),
  minute: time(1),
  h: time(60),
  hr: time(60),
  hour: time(60),
  d: time(1440),
  day: time(1440),
  week: time(10080),
  wk: time(10080),
  mm: length(0.001),
  cm: length(0.01),
  m: length(1),
  metre: length(1),
  meter: length(1),
  km: length(1000),
  in: length(0.0254),
  inch: length(0.0254),
  inches: length(0.0254),
  ft: length(0.3048),
  foot: length(0.3048),
  feet: length(0.3048),
  yd: length(0.9144),
  yard: length(0.9144),
  '°c': { kind: 'temperature', size: 1 },
  c: { kind: 'temperature', size: 1 },
  '°f': { kind: 'temperature', size: 5 / 9, zero: -32 },
  f: { kind: 'temperature', size: 5 / 9, zero: -32 },
  lx: light(1),
  lux: light(1),
  klx: light(1000),
  fc: light(10.764),
  lx·h: dose(1),
  klx·h: dose(1e3),
  mlx·h: dose(1e6),
  'lx h': dose(1),
  'klx h': dose(1e3),
  'mlx h': dose(1e6),
  w: { kind: 'power', size: 1 },
  watt: { kind: 'power', size: 1 },
  kw: { kind: 'power', size: 1000 },
  gf: { kind: 'force', size: 1 },
  kgf: { kind: 'force', size: 1000 },
  n: { kind: 'force', size: 101.97 },
  ppm: hardness(1),
  '°dh': hardness(17.848),
  '°dkh': hardness(17.848),
  '°fh': hardness(10),
  '°e': hardness(14.254),
  'meq/l': hardness(50.04),
  '% w/v': { kind: 'mass/volume', size: 0.01 },
  '% owf': { kind: 'mass/mass', size: 0.01 },
}

/**
 * An amount in another unit: `convert(¼, 'cup (US) per lb', 'mL per 100 g')`.
 *
 * Takes the measures of the kitchen, times, lengths, temperatures and light, and one of them for each of another
 * (`mL/g`, `g per 10 L`, `°F/min`). A rate of temperature has no zero of its own. A bare `%` keeps its meaning.
 *
 * @returns undefined when the two do not measure the same thing or one is not known.
 *
 * @example
 * convert(0.25, 'cup (US) per lb', 'mL per 100 g') // 13.04
 */
export function convert(amount: number, from: string, to: string): number | undefined {
  const [given, wanted] = [from.trim(), to.trim()]
  if (given === wanted || (given === '%' && wanted.startsWith('%'))) return amount
  const source = measureOf(given)
  const target = measureOf(wanted)
  if (!source || !target || source.kind !== target.kind) return undefined
  const converted = ((amount + (source.zero ?? 0)) * source.size) / target.size - (target.zero ?? 0)
  return Number.isFinite(converted) ? converted : undefined
}

/**
 * What a unit measures: `volume`, `mass`, `time`, `mass/volume` …, or undefined when it is not known.
 *
 * @example
 * [kindOfUnit('tbsp (metric)'), kindOfUnit('g/L'), kindOfUnit('furlong')] // ['volume', 'mass/volume', undefined]
 */
export function kindOfUnit(unit: string): string | undefined {
  return measureOf(unit.trim())?.kind
}

function measureOf(unit: string): Measure | undefined {
  // Nothing that is longer is the name of a unit.
  if (unit.length > 60) return undefined
  const whole = simple(unit)
  if (whole) return whole
  const [above = '', below, ...more] = unit.split(/\s+per\s+|\s*\/\s*/)
  if (below === undefined || more.length > 0) return undefined
  const counted = /^(\d+(?:[.,]\d+)?)?\s*(.+)$/.exec(below)
  const over = simple(above)
  const under = simple(counted?.[2] ?? '')
  const count = Number((counted?.[1] ?? '1').replace(',', '.'))
  if (!over || !under || !(count > 0)) return undefined
  return { kind: `${over.kind}/${under.kind}`, size: over.size / (count * under.size) }
}

function simple(unit: string): Measure | undefined {
  const spelt = unit.toLowerCase()
  for (const name of [spelt, spelt.replace(/s$/, '')]) if (Object.hasOwn(others, name)) return others[name]
  const kitchen = kitchenUnitCalled(unit)
  return kitchen.kind === 'unit' ? { kind: kitchen.unit.kind, size: kitchen.unit.size } : undefined
}
