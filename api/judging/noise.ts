import type { Condition } from './condition.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { noiseOfTwins } from './noise-of-twins.ts'
import { upperLimitOf } from './pooled-noise.ts'
import { wayOfCondition } from './way-of-measuring.ts'

/** What unchanged skeins show when they are read alike, and how well that is known. In ΔE00. */
export type Noise = {
  readonly kind: 'twins' | 'instrument' | 'planning'
  /** Root mean square ΔE00 of unchanged skeins read alike. */
  readonly rms: number
  /** Its one-sided 80 % upper limit: what decides. */
  readonly upperRms: number
  /** Degrees of freedom; undefined where it is not known of how many it comes (a planning value, an entered one). */
  readonly df: number | undefined
  /** Mean ΔE00 of unchanged skeins: 0.92 × rms. */
  readonly floor: number
  /** Where it comes from, as it stands in a sentence: “the dark twin of this trial, read again 4 times”. */
  readonly from: string
  /** Re-readings or repeats behind it; 0 for a planning value. */
  readonly n: number
}

/** Outcomes that are ΔE00 of a skein’s mean colour, or come from it. Others have no such error, or not this one. */
const ofColour: ReadonlySet<string> = new Set(['dE00', 'colour', 'light rating'])

/** SD an axis of the mean of five placings, as planning takes it where nothing was measured: common practice. */
const planningSd = { instrument: 0.13, photo: 0.3 } as const

/** Mean length of a normal vector of three equal axes over its root mean square: √(8/π) ÷ √3. */
const meanOfLength = Math.sqrt(8 / Math.PI) / Math.sqrt(3)

/** Of how many repeats it comes is not known; it is taken for as little as one repeat can tell. */
const dfUnknown = 3

/**
 * The measuring error of a condition, from the best source there is: twins re-read in this trial; the instrument’s own,
 * which leaves out what changes from day to day; a planning value. Sources of different kinds are never pooled.
 * Undefined for grades, counts and differences of which nothing was read.
 */
export function noiseOf(trial: JudgedTrial, condition: Condition): Noise | undefined {
  if (!ofColour.has(condition.outcome)) return undefined
  const twins = noiseOfTwins(trial, condition)
  if (twins) {
    const { rms, upperRms, df, n } = twins
    return { kind: 'twins', rms, upperRms, df, floor: meanOfLength * rms, from: fromTwins(twins), n }
  }
  return noiseOfInstrument(trial, condition)
}

function noiseOfInstrument(trial: JudgedTrial, condition: Condition): Noise | undefined {
  const { methods } = trial.record
  const way = wayOfCondition(trial, condition)
  const used =
    methods.find((it) => it.method === way?.method && it.instrumentId === way.instrumentId) ?? methods[0]
  if (!used || used.method === 'eye') return undefined
  const { sdL, sdA, sdB, instrument, sdFrom } = used
  const rms = Math.sqrt(2 * ((sdL ?? 0) ** 2 + (sdA ?? 0) ** 2 + (sdB ?? 0) ** 2))
  if (sdL !== null && sdA !== null && sdB !== null && rms > 0 && sdFrom !== 'planning value') {
    const source = sdFrom === 'gauge check' ? 'the gauge check' : 'the measuring error entered'
    return ofUnknownDf(rms, {
      kind: 'instrument',
      from: `${source} of ${instrument ?? 'the instrument'}`,
      n: 1,
    })
  }
  const sd = used.method === 'photo' ? planningSd.photo : planningSd.instrument
  return ofUnknownDf(Math.sqrt(6) * sd, {
    kind: 'planning',
    from: 'a planning value, for no twin was read again alike on another day',
    n: 0,
  })
}

function ofUnknownDf(rms: number, rest: Pick<Noise, 'kind' | 'from' | 'n'>): Noise {
  return { ...rest, rms, upperRms: upperLimitOf(rms, dfUnknown), df: undefined, floor: meanOfLength * rms }
}

function fromTwins({ twins, dark, n }: { twins: number; dark: boolean; n: number }): string {
  const name = dark ? 'dark twin' : 'twin'
  return `${twins === 1 ? `the ${name}` : `${twins} ${name}s`} of this trial, read again ${times(n)}${twins === 1 ? '' : ' in all'}`
}

function times(n: number): string {
  return n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`
}
