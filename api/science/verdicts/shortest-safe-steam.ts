import type { DeltaE, Minutes } from '../units.ts'
import { leastLevelThatHolds } from './least-level-that-holds.ts'

/** A skein that was steamed and washed. Skeins of one packet have one `packet`; left out, each row of a session and time is one of its skeins. */
export type SteamedSkein = {
  readonly session: string | number
  readonly packet?: string | number
  readonly steamed: Minutes
  readonly washLoss: DeltaE
  /** Grade of staining, from 1 to 5; rinses until the water was clear; felting, from 1 to 5. */
  readonly staining?: number
  readonly rinses?: number
  readonly felting?: number
}

/** Limits beside the margin; each only where it is given. */
export type SteamLimits = {
  readonly stainingAtLeast?: number
  readonly rinsesAtMost?: number
  /** The other end: too long a steam felts. */
  readonly feltingAtMost?: number
}

export type SafeSteam =
  | {
      readonly kind: 'holds'
      readonly steam: Minutes
      readonly extraLossAtMost: DeltaE
      /** Up to which time felting stays within its limit; undefined when no time meets both ends. */
      readonly upTo: Minutes | undefined
    }
  | {
      readonly kind: 'does-not-hold'
      readonly failed: Minutes
      readonly extraLossAtLeast: DeltaE | undefined
    }
  | {
      readonly kind: 'not-settled'
      readonly sessions: number
      /** About how many more would settle it, where that can be told. */
      readonly sessionsMore: number | undefined
    }

/**
 * The shortest steaming time that holds the colour as well as the longest one tried.
 *
 * A time holds when skeins steamed that long lose less than `margin` more in the wash than those steamed longest,
 * compared session by session, with the given confidence, and meet the limits in every session. We step down from
 * the longest time and stop at the first that fails; since the order is fixed beforehand, no correction for several
 * comparisons is due.
 *
 * @param skeins      In any order; a session without the longest time, or the time in question, is left out.
 * @param margin      The largest extra loss that you would still accept.
 * @param confidence  Between 0 and 1, one-sided; 0.95 unless given.
 * @param noise       Root mean square ΔE00 of unchanged skeins; a time must then hold net of it too.
 * @returns `not-settled` below three sessions that hold both times.
 * @see Hsu & Berger (1999), J. Am. Stat. Assoc. 94, 468–482.
 *
 * @example
 * const skein = (session, steamed, washLoss) => ({ session, steamed, washLoss })
 * const short = [skein('Mon', 10, 3.1), skein('Tue', 10, 2.6), skein('Wed', 10, 2.9)]
 * const half = [skein('Mon', 30, 1.2), skein('Tue', 30, 0.9), skein('Wed', 30, 0.9)]
 * const hour = [skein('Mon', 60, 1.0), skein('Tue', 60, 0.8), skein('Wed', 60, 1.1)]
 * shortestSafeSteam([...short, ...half, ...hour], { margin: 1 }) // { kind: 'holds', steam: 30, extraLossAtMost: 0.38 }
 */
export function shortestSafeSteam(
  skeins: readonly SteamedSkein[],
  {
    margin,
    confidence = 0.95,
    noise,
    limits = {},
  }: {
    readonly margin: DeltaE
    readonly confidence?: number
    readonly noise?: DeltaE
    readonly limits?: SteamLimits
  },
): SafeSteam {
  const rows = skeins.map((it) => ({
    level: it.steamed,
    block: it.session,
    vessel: it.packet,
    value: it.washLoss,
    side: { staining: it.staining, rinses: it.rinses, felting: it.felting },
  }))
  const found = leastLevelThatHolds(rows, { margin, confidence, noiseRms: noise, limits: limitsOf(limits) })
  const step = found.verdict === 'holds' ? found.steps.find((it) => it.level === found.least) : found.steps[0]
  // Branded numbers lose their brand on the way through levels of any kind; here they get it back.
  const steam = (step?.level ?? found.reference) as Minutes
  if (found.verdict === 'holds' && step?.upper !== undefined)
    return {
      kind: 'holds',
      steam,
      extraLossAtMost: step.upper as DeltaE,
      upTo: 'unavailable' in found.window ? undefined : (found.window.to as Minutes),
    }
  if (found.verdict === 'does-not-hold') {
    const referenceBreaks = found.referenceLimits.some((it) => it.end === 'low' && it.broken)
    return {
      kind: 'does-not-hold',
      failed: referenceBreaks ? (found.reference as Minutes) : steam,
      extraLossAtLeast: referenceBreaks ? undefined : (step?.lower as DeltaE | undefined),
    }
  }
  const sessions = step?.n ?? 0
  const needed = found.blocksNeeded
  return {
    kind: 'not-settled',
    sessions,
    sessionsMore: 'blocks' in needed ? Math.max(1, needed.blocks - sessions) : undefined,
  }
}

function limitsOf(limits: SteamLimits) {
  const { stainingAtLeast, rinsesAtMost, feltingAtMost } = limits
  return [
    ...(stainingAtLeast === undefined ? [] : [{ side: 'staining', atLeast: stainingAtLeast }]),
    ...(rinsesAtMost === undefined ? [] : [{ side: 'rinses', atMost: rinsesAtMost }]),
    ...(feltingAtMost === undefined
      ? []
      : [{ side: 'felting', atMost: feltingAtMost, end: 'high' as const }]),
  ]
}
