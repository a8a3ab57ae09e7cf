import { netOfNoise } from '../fastness/net-of-noise.ts'
import { blocksNeeded } from './blocks-needed.ts'
import { ladderCautions } from './ladder-cautions.ts'
import { ladderOfLevels } from './ladder-of-levels.ts'
import type {
  ExtraLoss,
  LadderMethod,
  LadderRule,
  LadderStep,
  LadderVerdict,
  Level,
  LevelRow,
  Needed,
  SideResult,
} from './level-rows.ts'
import { modelExtraLosses } from './model-extra-losses.ts'
import { pairedExtraLoss } from './paired-extra-loss.ts'
import { commonSpread, pooledExtraLoss } from './pooled-extra-loss.ts'
import { type LevelResults, resultsAt, resultsByLevel } from './results-by-level.ts'
import { sideResults } from './side-limits.ts'
import type { Verdict } from './verdict.ts'
import { windowOfLevels } from './window-of-levels.ts'

/** Fewer sessions than this never make a claim. */
export const fewestBlocks = 3

/**
 * The least level that is no worse than the reference: the shortest steam, the smallest amount of acid.
 *
 * From the reference downwards each level's extra loss is held against the margin by its one-sided upper limit, raw
 * and net of noise, and its side results against their limits in every session. The first level that does not hold
 * ends the claim; since the order is fixed beforehand, no correction for several comparisons is due. What lies
 * below is worked out and shown, never claimed.
 *
 * @param rows     In any order. Rows without a result, and blocks without the reference, are left out of a comparison.
 * @param design   What the rows cannot say: blocks that count as one at a level, since their units were not independent
 *                 (`paired` only); levels of which no claim can be made; a measuring that cannot see the margin.
 * @throws RangeError for a margin that is not above 0, a reference that is no level, levels without an order, or a
 *         method that needs blocks where rows have none.
 * @see Hsu & Berger (1999), J. Am. Stat. Assoc. 94, 468–482; domain: noise makes raw extra losses too small.
 *
 * @example
 * const row = (level, block, value) => ({ level, block, value })
 * const twenty = [row(20, 'Mon', 3.1), row(20, 'Tue', 2.6), row(20, 'Wed', 2.9)]
 * const half = [row(35, 'Mon', 1.2), row(35, 'Tue', 0.9), row(35, 'Wed', 0.9)]
 * const full = [row(75, 'Mon', 1.0), row(75, 'Tue', 0.8), row(75, 'Wed', 1.1)]
 * leastLevelThatHolds([...twenty, ...half, ...full], { margin: 1 }) // { verdict: 'holds', least: 35 }
 */
export function leastLevelThatHolds(
  rows: readonly LevelRow[],
  rule: LadderRule,
  design: LadderDesign = {},
): LadderVerdict {
  const { margin, confidence = 0.95, limits = [], noiseRms } = rule
  if (!(margin > 0)) throw new RangeError('The margin is more than 0.')
  const ladder = ladderOfLevels(rows, rule)
  const place = placeOfReference(ladder, rule.reference)
  const reference = ladder[place]
  if (reference === undefined) throw new RangeError('The reference is none of the levels.')
  const method = methodFor(rows, rule.method)

  const compare = comparison(rows, { ...rule, confidence, reference, method, groupOf: design.groupOf })
  const net = noiseRms === undefined ? undefined : compare((value) => netOfNoise(value, noiseRms))
  const raw = compare((value) => value)

  const limitsAt = new Map(
    ladder.map((level) => [
      level,
      sideResults(
        rows.filter((row) => String(row.level) === String(level)),
        limits,
      ),
    ]),
  )
  const sidesOf = (level: Level): readonly SideResult[] => limitsAt.get(level) ?? []
  const referenceMeets = lowEnd(sidesOf(reference)).every((it) => it.met && it.missing === 0)

  let allHold = referenceMeets
  const steps = ladder
    .slice(0, place)
    .reverse()
    .map((level): LadderStep => {
      const loss = raw.at(level)
      const netLoss = net?.at(level)
      const own = answerOf(loss, netLoss, lowEnd(sidesOf(level)), margin)
      const answer = withDesign(own, level, reference, design)
      allHold &&= answer === 'holds'
      return {
        ...loss,
        level,
        ...(netLoss === undefined ? {} : { net: netLoss }),
        limits: sidesOf(level),
        answer,
        holds: allHold,
      }
    })

  const least = steps.filter((step) => step.holds).at(-1)?.level
  const blocks = resultsAt(raw.results, reference)
  const it = {
    verdict: verdictOf(steps, design.noClaim?.(reference) ? [] : lowEnd(sidesOf(reference))),
    least,
    reference,
    referenceMean: meanOf(method === 'pooled' ? blocks.units : [...blocks.blocks.values()]),
    referenceLimits: sidesOf(reference),
    window: windowOfLevels(
      ladder.map((level) => ({ level, limits: sidesOf(level) })),
      least,
    ),
    steps,
    blocksNeeded: neededFor(steps, {
      margin,
      confidence,
      sdPlanned: rule.sdPlanned,
      pooled: method === 'pooled',
    }),
    method,
    confidence,
  }
  return { ...it, cautions: [...ladderCautions(it, { rows, rule, results: raw.results }), ...raw.cautions] }
}

export type LadderDesign = {
  readonly groupOf?: ((level: Level) => (block: string) => string) | undefined
  readonly noClaim?: ((level: Level) => boolean) | undefined
  readonly cannotSeeMargin?: boolean | undefined
}

function withDesign(answer: Verdict, level: Level, reference: Level, design: LadderDesign): Verdict {
  if (design.noClaim?.(level) || design.noClaim?.(reference)) return 'not-settled'
  return answer === 'holds' && design.cannotSeeMargin ? 'not-settled' : answer
}

/** The answer of one level, by itself. */
function answerOf(
  loss: ExtraLoss,
  net: ExtraLoss | undefined,
  limits: readonly SideResult[],
  margin: number,
): Verdict {
  if (limits.some((it) => it.broken)) return 'does-not-hold'
  if (loss.lower !== undefined && loss.lower > margin) return 'does-not-hold'
  if (loss.n < fewestBlocks || limits.some((it) => !it.met || it.missing > 0)) return 'not-settled'
  if (loss.upper === undefined || loss.upper >= margin) return 'not-settled'
  if (net !== undefined && (net.upper === undefined || net.upper >= margin)) return 'not-settled'
  return 'holds'
}

function verdictOf(steps: readonly LadderStep[], reference: readonly SideResult[]): Verdict {
  if (steps.some((step) => step.holds)) return 'holds'
  if (reference.some((it) => it.broken)) return 'does-not-hold'
  const first = steps[0]?.answer ?? 'not-settled'
  // A reference with a blank side result keeps a level that would hold from holding: that is not settled.
  return first === 'holds' ? 'not-settled' : first
}

function neededFor(
  steps: readonly LadderStep[],
  options: { margin: number; confidence: number; sdPlanned: number | undefined; pooled: boolean },
): Needed {
  const step = steps.find((it) => it.answer === 'not-settled')
  return step === undefined ? { unavailable: 'No level is left unsettled.' } : blocksNeeded(step, options)
}

type Compared = {
  readonly at: (level: Level) => ExtraLoss
  readonly cautions: readonly string[]
  readonly results: ReadonlyMap<string, LevelResults>
}

/** The way of comparing that the rule names, ready for values as they are and net of noise. */
function comparison(
  rows: readonly LevelRow[],
  {
    reference,
    confidence,
    method,
    direction = 'smaller-is-better',
    groupOf,
  }: LadderRule & {
    reference: Level
    confidence: number
    method: LadderMethod
    groupOf: ((level: Level) => (block: string) => string) | undefined
  },
): (change: (value: number) => number) => Compared {
  const sign = direction === 'smaller-is-better' ? 1 : -1
  return (change) => {
    const results = resultsByLevel(rows, change)
    if (method === 'model') return { results, ...modelExtraLosses(results, reference, { confidence, sign }) }
    const against = resultsAt(results, reference)
    const spread = commonSpread([...results.values()].map((it) => it.units))
    return {
      results,
      cautions: [],
      at: (level) =>
        method === 'paired'
          ? pairedExtraLoss(resultsAt(results, level), against, {
              confidence,
              sign,
              groupOf: groupOf?.(level),
            })
          : pooledExtraLoss(resultsAt(results, level), against, { confidence, sign, spread }),
    }
  }
}

function methodFor(rows: readonly LevelRow[], asked: LadderMethod | undefined): LadderMethod {
  const withBlock = rows.filter((row) => row.block !== undefined).length
  const method = asked ?? (withBlock > 0 ? 'paired' : 'pooled')
  if (method !== 'pooled' && withBlock < rows.length)
    throw new RangeError(`“${method}” compares within blocks, and some rows have none.`)
  return method
}

function placeOfReference(ladder: readonly Level[], reference: Level | undefined): number {
  if (reference === undefined) return ladder.length - 1
  return ladder.findIndex((level) => String(level) === String(reference))
}

function lowEnd(limits: readonly SideResult[]): readonly SideResult[] {
  return limits.filter((it) => it.end === 'low')
}

function meanOf(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return Number.isFinite(mean) ? mean : undefined
}
