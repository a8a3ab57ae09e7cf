import type { TrialNoise } from '#api/science/verdicts/trial-verdict.ts'
import type { TrialRecord } from '#db/trial-record.ts'

export type NoiseFound = TrialNoise & {
  /** How many re-readings or repeats it comes from; 0 for a planning value. */
  readonly n: number
  readonly kind: 'twins' | 'instrument' | 'planning'
}

/** SD an axis of the mean of five placings, as planning takes it where nothing was measured: common practice. */
const planningSd = { instrument: 0.13, photo: 0.3 } as const

/**
 * What unchanged skeins show when they are read alike, from the best source there is: twins re-read in this trial; the
 * repeats or gauge check of the instrument that read it; planning values. Eye grades have none.
 */
export function noiseOfTrial({
  twins,
  methods,
}: Pick<TrialRecord, 'twins' | 'methods'>): NoiseFound | undefined {
  if (twins.length > 0) {
    const squares = twins.reduce((sum, twin) => sum + twin.dE00 ** 2, 0)
    const skeins = new Set(twins.map((twin) => twin.skeinId)).size
    const which = skeins === 1 ? 'the twin' : `${skeins} twins`
    return {
      kind: 'twins',
      rms: Math.sqrt(squares / twins.length),
      floor: twins.reduce((sum, twin) => sum + twin.dE00, 0) / twins.length,
      from: `${which} of this trial, read again ${times(twins.length)}`,
      n: twins.length,
    }
  }
  const [most] = methods
  if (!most || most.method === 'eye') return undefined
  const { sdL, sdA, sdB, instrument, sdFrom } = most
  if (sdL !== null && sdA !== null && sdB !== null && sdFrom !== 'planning value') {
    const rms = Math.sqrt(2 * (sdL ** 2 + sdA ** 2 + sdB ** 2))
    return {
      kind: 'instrument',
      rms,
      floor: rms * meanOfLength,
      from: `the ${sdFrom === 'gauge check' ? 'gauge check' : 'noise entered'} of ${instrument ?? 'the instrument'}`,
      n: 1,
    }
  }
  const sd = most.method === 'photo' ? planningSd.photo : planningSd.instrument
  const rms = Math.sqrt(6) * sd
  return {
    kind: 'planning',
    rms,
    floor: rms * meanOfLength,
    from: 'a planning value, for no twin was read',
    n: 0,
  }
}

/**
 * The mean length of a normal vector of three equal axes over its root mean square: √(8/π) ÷ √3.
 * With the 2.26 × SD of domain notes: √6 × 0.9213 = 2.257.
 */
const meanOfLength = Math.sqrt(8 / Math.PI) / Math.sqrt(3)

function times(n: number): string {
  return n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`
}
