import { fewInWords, inWords, oneInWords } from '#api/contract/number-in-words.ts'
import type { PatternBench } from '#api/contract/patterns.ts'
import type { PlanGuard, PlanTried } from '#api/contract/plan.ts'
import { type GivenThing, unitOfFactor } from '#api/science/design/unit-of-factor.ts'

/** So many of each, whoever drew them. */
export type BenchSizes = {
  readonly sessions: number
  readonly vesselsPerLevel: number
  readonly skeinsPerVessel: number
}

export type PlannedFactor = {
  readonly levels: readonly { readonly label: string; readonly isReference: boolean }[]
  /** How many combinations with the levels of other factors there are; 1 when this is the only one. */
  readonly others?: number
}

type Counted = { readonly counts: PlanTried['counts']; readonly guards: PlanGuard[] }

/** Fewer sessions than these never make a claim; with so many the answer mostly comes. */
const least = 3
const better = 4

/**
 * What a plan really counts, by the same rule as data (`unitOfFactor`), and what is wrong with its counting.
 *
 * @example
 * countPlan({ sessions: 2, vesselsPerLevel: 1, skeinsPerVessel: 3 }, { levels: [{ label: '35', isReference: false }, { label: '75', isReference: true }] }, { session: { one: 'session', many: 'sessions' }, vessel: { one: 'packet', many: 'packets' }, shares: 'heat', given: 'vessel' }).guards[0].title // 'Three skeins in one packet are one.'
 */
export function countPlan(
  sizes: BenchSizes,
  factor: PlannedFactor,
  bench: Pick<PatternBench, 'session' | 'vessel' | 'shares' | 'given'>,
): Counted {
  const things = plannedThings(sizes, factor, bench.given)
  const unit = unitOfFactor(things)
  const levels = factor.levels.length
  const others = factor.others ?? 1
  const perLevel = bench.given === 'skein' ? 1 : levels * others
  const vessels = sizes.sessions * sizes.vesselsPerLevel * perLevel
  const counts: Counted['counts'] = {
    sessions: sizes.sessions,
    vessels,
    skeins: things.length,
    unitsPerLevel: Math.min(...unit.counts.values()),
    skeinsPerLevel: Math.round(things.length / levels),
    unit: unit.kind,
  }
  return { counts, guards: guardsOf(sizes, factor, bench, counts) }
}

/** Every skein that the plan means, named by where it would lie. */
function plannedThings(
  { sessions, vesselsPerLevel, skeinsPerVessel }: BenchSizes,
  { levels, others = 1 }: PlannedFactor,
  given: PatternBench['given'],
): GivenThing[] {
  const things: GivenThing[] = []
  for (let session = 1; session <= sessions; session++) {
    for (const { label } of levels) {
      for (let beside = 1; beside <= others; beside++) {
        for (let vessel = 1; vessel <= vesselsPerLevel; vessel++) {
          for (let skein = 1; skein <= skeinsPerVessel; skein++) {
            const own = given === 'vessel' ? `${label} ${beside} ${vessel}` : `${vessel}`
            things.push({
              level: label,
              session: String(session),
              vessel: own,
              skein: `${session} ${label} ${beside} ${vessel} ${skein}`,
            })
          }
        }
      }
    }
  }
  return things
}

function guardsOf(
  sizes: BenchSizes,
  factor: PlannedFactor,
  bench: Pick<PatternBench, 'session' | 'vessel' | 'shares' | 'given'>,
  counts: Counted['counts'],
): PlanGuard[] {
  const guards: PlanGuard[] = []
  const { session, vessel, shares } = bench
  const share = bench.given === 'vessel' && sizes.skeinsPerVessel > 1
  const few = bench.given === 'vessel' && sizes.sessions < least
  if (share || few) {
    const offer = {
      sessions: few ? better : sizes.sessions,
      vesselsPerLevel: sizes.vesselsPerLevel,
      skeinsPerVessel: 1,
    }
    const perSkein = counts.skeins / (sizes.sessions * sizes.skeinsPerVessel)
    const skeinsThen = perSkein * offer.sessions
    const counted = offer.sessions * offer.vesselsPerLevel
    const settle = `${fewInWords(sizes.sessions, session)} ${sizes.sessions === 1 ? 'settles' : 'settle'} nothing: ${inWords(least)} is the least, ${inWords(better)} is better.`
    guards.push({
      kind: share ? 'skeins-share' : 'few-sessions',
      title: share
        ? `${fewInWords(sizes.skeinsPerVessel, { one: 'skein', many: 'skeins' })} in one ${vessel.one} are one.`
        : `${fewInWords(sizes.sessions, session)} ${sizes.sessions === 1 ? 'settles' : 'settle'} nothing.`,
      text: [
        share
          ? [
              `They share its ${shares}, so this plan counts ${counts.unitsPerLevel} for each level.`,
              ...(few ? [settle] : []),
            ].join(' ')
          : `What differs from day to day cannot be told from what the levels do: ${inWords(least)} is the least, ${inWords(better)} is better.`,
        `${share ? `One skein in each ${vessel.one} and ` : ''}${inWords(offer.sessions)} ${offer.sessions === 1 ? session.one : session.many} take ${skeinsThen} skeins instead of ${counts.skeins}, and count ${counted}.`,
      ].map(asSentence),
      offer,
    })
  }
  if (factor.levels.length < 2 && bench.given === 'vessel') {
    guards.push({
      kind: 'one-level',
      title: 'One level has nothing to be held against.',
      text: [
        `This can still be judged by limits of its own, ${oneInWords(vessel)} at a time: the worst decides.`,
      ],
      offer: null,
    })
  }
  return guards
}

const asSentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
