import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import type { SeededRandom } from '#api/science/design/seeded-random.ts'
import type { ReadingSeen, TrialRecord } from '#db/trial-record.ts'
import { type ResultWritten, recordOf, type SkeinWritten } from '#test/support/a-record.ts'

/** A world whose truth is known. The margin is 1 ΔE00; the reference loses nothing. */
export type World = {
  readonly sessions: number
  /** Mean ΔE00 of unchanged skeins, in margins. */
  readonly floor: number
  /** Error of L*, a* and b* in ΔE00, against each other. */
  readonly axes: readonly [number, number, number]
  /** Half of the error’s variance is a sitting’s: all readings before the wash have one, all after it another. */
  readonly sharedShift: boolean
  /** Twins are read first and last in the sittings of the judged skeins, else on days of their own. */
  readonly beside: boolean
  readonly twins: number
  /** Readings of each twin after its first. */
  readonly reread: number
  /** True extra loss of the level, in margins. */
  readonly extra: number
}

const wear = { W2: 3 }
const day = (n: number) => new Date(Date.UTC(2026, 2, 1 + n, 9))

/** SD of single packets, as a share of what they lose. */
const packetSpread = 0.25

/** One made-up trial of a level against its reference, read with a meter, as its record comes from the database. */
export function madeTrial(world: World, random: SeededRandom): TrialRecord {
  const errors = errorsOf(world, random)
  const [before, after] = [errors.sitting(), errors.sitting()]
  const readings: ReadingSeen[] = []
  const colours: TrialRecord['colours'] = []
  const read = (code: string, colour: Lab, sitting: Lab, on: number, worn: Record<string, number>): Lab => {
    const seen = plus(plus(colour, sitting), errors.placing())
    readings.push(readingOf(code, seen, on, worn))
    return seen
  }
  const skeins: SkeinWritten[] = []
  for (let session = 0; session < world.sessions; session++)
    for (const level of ['shortcut', 'usual']) {
      const code = `${level} ${session}`
      const loss = level === 'usual' ? 0 : world.extra * (1 + packetSpread * random.normal())
      const first = read(code, grey, before, 0, {})
      const last = read(code, plus(grey, { L: loss, a: 0, b: 0 }), after, 30, wear)
      colours.push({ skeinId: `#${code}`, wear, l: last.L, a: last.a, b: last.b, readingsN: 1, spotsN: 5 })
      const result: ResultWritten = {
        kind: 'dE00',
        value: ciede2000(first, last),
        wear,
        basis: 'own',
        spots: 5,
        by: [last.L - first.L, last.a - first.a, last.b - first.b],
      }
      skeins.push({ code, in: [code], level: { way: level }, results: [result] })
    }
  const days = Array.from({ length: world.reread + 1 }, (_, n) => {
    if (world.beside && n === 0) return { on: 0, sitting: before }
    if (world.beside && n === world.reread) return { on: 30, sitting: after }
    return { on: 2 * n + 2, sitting: errors.sitting() }
  })
  for (let twin = 0; twin < world.twins; twin++) {
    skeins.push({ code: `twin ${twin}`, role: 'dark twin' })
    for (const { on, sitting } of days) read(`twin ${twin}`, grey, sitting, on, {})
  }
  const record = recordOf({
    factors: [{ key: 'way', stage: 'dye', levels: ['shortcut', 'usual'], reference: 'usual' }],
    sessions: Array.from({ length: world.sessions }, (_, n) => `session ${n}`),
    vessels: skeins.flatMap(({ code, in: vessels = [] }) =>
      vessels.map((label) => ({ label, stage: 'dye' as const, session: `session ${code.split(' ')[1]}` })),
    ),
    skeins,
  })
  return { ...record, readings, colours }
}

// At L* 50 and without colour ΔE00 is ΔL*, Δb*, and one and a half times Δa*.
const grey: Lab = { L: 50, a: 0, b: 0 }
const plus = (one: Lab, other: Lab): Lab => ({ L: one.L + other.L, a: one.a + other.a, b: one.b + other.b })

function errorsOf({ floor, axes, sharedShift }: World, random: SeededRandom) {
  // Mean length of the difference of two readings is `floor`; with equal axes it is 0.92 of its root mean square.
  const squares = axes.reduce((sum, it) => sum + it ** 2, 0)
  const rms = floor / meanOverRms(axes)
  const unit = rms / Math.sqrt(2 * squares)
  const error = (share: number): Lab => ({
    L: unit * axes[0] * share * random.normal(),
    a: (unit * axes[1] * share * random.normal()) / 1.5,
    b: unit * axes[2] * share * random.normal(),
  })
  const half = Math.SQRT1_2
  return {
    placing: () => error(sharedShift ? half : 1),
    sitting: () => error(sharedShift ? half : 0),
  }
}

/** Mean length of a normal vector over its root mean square: √(8/3π) for equal axes; nearly a line for 1 : 0.3 : 0.3. */
function meanOverRms([first, second]: World['axes']): number {
  return first === second ? Math.sqrt(8 / (3 * Math.PI)) : meanOfUnequal
}
/** By numerical integration (mean of √(z₁² + 0.09 z₂² + 0.09 z₃²) ÷ √1.18, four million draws). */
const meanOfUnequal = 0.864

function readingOf(code: string, { L, a, b }: Lab, on: number, worn: Record<string, number>): ReadingSeen {
  return {
    id: `#${code} reading ${on}`,
    skeinId: `#${code}`,
    wear: worn,
    wet: false,
    placing: 1,
    meanL: L,
    meanA: a,
    meanB: b,
    spotsN: 5,
    blindCode: null,
    supersedesId: null,
    reason: null,
    takenAt: day(on),
    createdAt: day(on),
    sittingId: `#sitting ${on}`,
    method: 'instrument',
    instrumentId: '#meter',
    illuminant: 'D65',
    observer: '10',
    geometry: null,
    apertureMm: null,
    inFrameStandardId: null,
    person: null,
  }
}
