export type Stage = 'soak' | 'dye' | 'set' | 'rinse' | 'dry' | 'wash' | 'rub' | 'light'

/** Asks again when any of these is so. `zeroIsFine`: a control of 0 is not doubted though it lies under. */
export type Doubtful = {
  readonly under?: number
  readonly over?: number
  readonly atMost?: number
  readonly atLeast?: number
  readonly exactly?: number
  readonly otherThan?: number
  readonly zeroIsFine?: true
}

export type Impossible = {
  readonly below: number
  readonly above: number
  /** The lower end itself is impossible too (`>0–20000`). */
  readonly belowExclusive?: true
}

export type Bounds = {
  /** In the dyer's words, as a sentence begins with it. */
  readonly label: string
  /** Empty for a bare number. */
  readonly unit: string
  readonly usual?: readonly [number, number]
  /** One figure that stands for what is usual, where guidance agrees on one; for “three times the usual”. */
  readonly typical?: number
  /** What is usual in a special case, in words. */
  readonly usualNote?: string
  readonly doubtful?: Doubtful
  /** Why a doubtful value is dangerous, in words. */
  readonly because?: string
  /** Said only of a value over this; without it, of every doubtful value. */
  readonly becauseOver?: number
  /** A doubt that needs more than the value itself, in words. */
  readonly doubtfulIf?: string
  readonly impossible: Impossible
  /** What to do with more than is possible here, in whole sentences. */
  readonly whenTooMuch?: (value: number) => string
  readonly step?: 'whole' | 'halves'
  readonly stage?: Stage
  /** Something read, counted or graded rather than set. */
  readonly measured?: true
}

/**
 * What to do with acid stronger than a kitchen's: diluted to 5 % where it can be had at home, left alone above.
 *
 * Volumes: one part of s % in s ÷ 5 parts altogether is 5 %.
 */
function acidTooStrong(percent: number): string {
  if (percent > 25) return 'Do not use it at home: it burns skin, eyes and lungs. Buy vinegar of 5 %.'
  const water = Number((percent / 5 - 1).toPrecision(2))
  return `Dilute it to 5 % first: gloves and goggles on, window open, pour acid into water, never water into acid: 1 part acid into ${water} parts water. Then enter 5 %.`
}

type More = Omit<Bounds, 'label' | 'unit' | 'usual' | 'impossible'>
type Span = readonly [number, number] | undefined

const from = (below: number, above: number): Impossible => ({ below, above })
const over = (below: number, above: number): Impossible => ({ below, above, belowExclusive: true })
const of = (label: string, unit: string, usual: Span, impossible: Impossible, more: More = {}): Bounds => ({
  label,
  unit,
  ...(usual ? { usual } : {}),
  impossible,
  ...more,
})

/**
 * The variables of a dyeing trial, each once: its unit, what is usual, what is doubtful (we ask “Keep it?”) and
 * what is impossible (we refuse). Plain data, so that the pages can import it.
 *
 * Blank is not recorded, never zero; zero is a value where the range begins at 0 (a control).
 * Source: the ranges of published methods, suppliers' guidance and practice gathered for this trade.
 */
export const boundsTable = {
  // label, unit, usual, impossible outside, and what else there is to say
  fibreMass: of('Fibre weight', 'g', [5, 500], over(0, 20000), { doubtful: { under: 2, over: 2000 } }),
  composition: of('Share of a fibre', '%', undefined, from(0, 100), {
    doubtfulIf: 'less than 60 % of the yarn takes acid dye',
  }),
  scourTime: of('Scouring time', 'min', [20, 30], from(0, 180), { stage: 'soak' }),
  preSoak: of('Pre-soak', 'min', [30, 720], from(0, 10080), {
    doubtful: { exactly: 0, over: 1440 },
    stage: 'soak',
  }),
  depth: of('Depth of shade', '% owf', [0.05, 4], from(0, 15), {
    doubtful: { under: 0.005, over: 8, zeroIsFine: true },
    stage: 'dye',
  }),
  dyeMass: of('Dye powder', 'g', [0.05, 20], from(0, 500), {
    doubtfulIf: 'it is less than 5 steps of the scale',
    stage: 'dye',
  }),
  stockStrength: of('Stock strength', '% w/v', [0.1, 2], over(0, 20), {
    doubtful: { under: 0.01, over: 5 },
    stage: 'dye',
  }),
  stockVolume: of('Stock', 'mL', [2, 500], from(0, 20000), {
    doubtful: { under: 2, zeroIsFine: true },
    stage: 'dye',
  }),
  drops: of('Drops', '', [1, 60], from(0, 1000), {
    usualNote: 'a drop is about 0.05 mL, 0.03 to 0.07',
    doubtful: { over: 100 },
    step: 'whole',
    stage: 'dye',
  }),
  acidStrength: of('Vinegar strength', '%', [5, 5], over(0, 15), {
    doubtful: { under: 4, over: 8 },
    because: 'stronger acid stings eyes and skin: gloves and goggles, and acid into water',
    becauseOver: 8,
    whenTooMuch: acidTooStrong,
    stage: 'dye',
  }),
  acid: of('Vinegar', 'mL per 100 g', [15, 100], from(0, 1000), {
    typical: 50,
    usualNote: 'counted as vinegar of 5 %',
    doubtful: { atLeast: 150 },
    stage: 'dye',
  }),
  citric: of('Citric acid', '% owf', [1, 8], from(0, 50), { doubtful: { over: 10 }, stage: 'dye' }),
  pH: of('pH with the yarn in', '', [3.5, 5.5], from(0, 14), {
    doubtful: { under: 2.5, over: 7.5 },
    stage: 'dye',
    measured: true,
  }),
  tapAlkalinity: of('Alkalinity of the water', 'mg/L', [20, 300], from(0, 1500), {
    usualNote: 'as calcium carbonate',
    doubtful: { over: 400 },
  }),
  bathVolume: of('Bath', 'L', [0.1, 15], over(0, 500), {
    doubtfulIf: 'it fills more than three quarters of the pot',
    stage: 'dye',
  }),
  liquorRatio: of('Liquor ratio', 'mL/g', [15, 40], from(0.5, 500), {
    usualNote: 'low-water dyeing 3–10',
    doubtful: { under: 3, over: 60 },
    stage: 'dye',
  }),
  yarnWetness: of('Wetness of the yarn', 'g/g', [0.6, 1.5], from(0, 10), {
    doubtful: { under: 0.3, over: 3 },
    stage: 'dye',
  }),
  startTemp: of('Starting temperature', '°C', [15, 60], from(0, 105), {
    doubtful: { over: 70 },
    stage: 'dye',
  }),
  ramp: of('Heating rate', '°C/min', [1, 2], from(0, 20), { doubtful: { over: 4 }, stage: 'dye' }),
  peakTemp: of('Peak temperature', '°C', [80, 96], from(0, 125), {
    usualNote: 'silk 88 at most',
    doubtful: { under: 70, over: 98 },
    because: 'over boiling only in a vessel made for pressure, used by its manual',
    becauseOver: 100,
    stage: 'dye',
  }),
  hold: of('Hold', 'min', [20, 60], from(0, 720), { doubtful: { under: 10, over: 120 }, stage: 'dye' }),
  steamTime: of('Steam time', 'min', [20, 60], from(0, 480), {
    usualNote: 'silk 45–180',
    doubtful: { under: 10, over: 120, zeroIsFine: true },
    stage: 'set',
  }),
  heatUp: of('Heat-up', 'min', [5, 20], from(0, 180), { doubtful: { over: 45 }, stage: 'set' }),
  lidOpenings: of('Lid openings', '', [0, 3], from(0, 50), {
    doubtful: { over: 5 },
    step: 'whole',
    stage: 'set',
  }),
  packetMass: of('Packet weight', 'g', [10, 120], over(0, 2000), { doubtful: { over: 200 }, stage: 'set' }),
  coolDown: of('Cooling time', 'h', [1, 12], from(0, 72), {
    doubtfulIf: 'it differs within the trial',
    stage: 'set',
  }),
  microwavePower: of('Microwave power', 'W', [600, 1000], from(100, 2000), { stage: 'set' }),
  microwaveBurst: of('Microwave burst', 's', [30, 120], from(5, 900), {
    doubtful: { over: 120 },
    because:
      'yarn that dries out can catch fire. Two minutes at a time, wet through, wrap vented, no metal, never left alone',
    stage: 'set',
  }),
  altitude: of('Altitude', 'm', [0, 1500], from(-450, 5500), { doubtful: { over: 2500 } }),
  rinseCount: of('Rinses', '', [2, 6], from(0, 40), {
    doubtful: { over: 10 },
    step: 'whole',
    stage: 'rinse',
  }),
  rinseVolume: of('Rinse water', 'mL/g', [10, 30], over(0, 500), {
    doubtful: { under: 5, over: 60 },
    stage: 'rinse',
  }),
  rinseTemp: of('Rinse temperature', '°C', [15, 40], from(0, 95), {
    doubtfulIf: 'it is more than 20 °C from the rinse before',
    stage: 'rinse',
  }),
  clarity: of('Rinse clarity', '', undefined, from(1, 5), {
    doubtfulIf: 'it is a step or more below an earlier rinse',
    step: 'halves',
    stage: 'rinse',
    measured: true,
  }),
  detergent: of('Detergent', 'g/L', [0.5, 5], from(0, 50), { doubtful: { over: 10 } }),
  restDry: of('Rest before reading', 'h', [12, 10000], from(0, 10000), {
    doubtful: { under: 6 },
    stage: 'dry',
  }),
  washTemp: of('Wash temperature', '°C', [20, 40], from(5, 95), { doubtful: { over: 50 }, stage: 'wash' }),
  washTime: of('Wash time', 'min', [10, 45], from(1, 600), { doubtful: { over: 60 }, stage: 'wash' }),
  washCycles: of('Wash cycles', '', [1, 5], from(0, 200), {
    doubtful: { over: 25 },
    step: 'whole',
    stage: 'wash',
  }),
  washLiquor: of('Wash water', 'mL/g', [20, 100], over(0, 1000), { doubtful: { under: 10 }, stage: 'wash' }),
  lightDays: of('Days in the light', 'd', [14, 90], from(0, 3650), {
    doubtful: { over: 365 },
    stage: 'light',
  }),
  sunHours: of('Hours of sun a day', 'h', undefined, from(0, 24), { stage: 'light' }),
  lux: of('Illuminance', 'lx', [2000, 80000], from(0, 150000), {
    doubtful: { over: 120000 },
    stage: 'light',
  }),
  dose: of('Light dose', 'Mlx·h', [1, 30], from(0, 1000), { doubtful: { over: 100 }, stage: 'light' }),
  blueWool: of('Blue wool', '', [1, 6], from(1, 8), { step: 'halves', stage: 'light', measured: true }),
  rubStrokes: of('Rubbing strokes', '', [10, 10], from(1, 100), {
    doubtful: { otherThan: 10 },
    step: 'whole',
    stage: 'rub',
  }),
  rubLoad: of('Rubbing load', 'gf', [900, 900], from(50, 5000), {
    doubtful: { under: 500, over: 1500 },
    stage: 'rub',
  }),
  L: of('L*', '', [12, 90], from(0, 100), { doubtful: { under: 8, over: 97 }, measured: true }),
  a: of('a*', '', [-60, 90], from(-128, 127), {
    doubtful: { under: -100, over: 100 },
    doubtfulIf: 'the chroma is over 110',
    measured: true,
  }),
  b: of('b*', '', [-60, 90], from(-128, 127), {
    doubtful: { under: -100, over: 100 },
    doubtfulIf: 'the chroma is over 110',
    measured: true,
  }),
  grade: of('Grade', '', undefined, from(1, 5), { step: 'halves', measured: true }),
  readings: of('Readings', '', [3, 5], from(1, 50), {
    doubtful: { exactly: 1 },
    step: 'whole',
    measured: true,
  }),
  photoChannel: of('Photo channel', '', [20, 240], from(0, 255), {
    doubtful: { atMost: 5, atLeast: 250 },
    measured: true,
  }),
  greyCardSpread: of('Spread over the grey card', '', undefined, from(0, 255), {
    doubtful: { over: 10 },
    measured: true,
  }),
  loopLength: of('Loop length', 'cm', [50, 180], from(10, 500), {
    doubtfulIf: 'it has changed by more than 5 %',
    measured: true,
  }),
  shortening: of('Shortening', '%', undefined, from(-25, 80), {
    doubtful: { under: -5, over: 5 },
    measured: true,
  }),
}
