import { binomialAtLeast } from '#api/science/statistics/binomial.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { counted, percent, sentenceCase } from '#api/words/numbers.ts'
import type { Answer } from './answer.ts'
import { type ArmAsked, unanswered } from './arm-asked.ts'
import type { ArmValue } from './block-cells.ts'
import { type GradedGain, gradedGains } from './graded-gains.ts'

/** Fewer pairs than this say nothing by grades. */
const fewestPairs = 5

/** Beyond this many pairs nobody goes on. */
const mostPairs = 50

/** Better by grades or by yes and no: pair by pair, ties against. */
export function betterByGrades(read: readonly ArmValue[], asks: readonly ArmAsked[]): Answer[] {
  const [first] = asks
  if (!first) return []
  const { asked, least, controlId } = first
  const found = gradedGains(read, {
    control: controlId,
    direction: asked.condition.direction,
    least,
    confidence: asked.confidence,
  })
  return asks.map((ask) => {
    const gain = found.find(({ arm }) => arm === ask.level.id)
    if (!gain) return { ...unanswered(ask), reason: `Nothing is recorded of ${ask.name} yet.` }
    const { answer, because } = gradedVerdict(gain, ask)
    return {
      ...unanswered(ask),
      answer,
      reason: reasonOf(ask, gain, because),
      n: gain.pairs,
      method: [
        `Exact one-sided sign test on ${counted(gain.pairs, { one: 'pair', many: 'pairs' })} within ${ask.units.many}, ties counted against${found.length > 1 ? `, Bonferroni for ${found.length} arms` : ''}.`,
      ],
      figures: {
        leastGain: least,
        better: gain.better,
        worse: gain.worse,
        pBetter: gain.pBetter,
        pWorse: gain.pWorse,
        shareBetterUpTo: gain.shareBetterUpTo ?? null,
      },
      more: because === 'limit' || because === 'few pairs' ? morePairs(gain) : null,
    }
  })
}

type Because = 'better' | 'worse' | 'none better' | 'one unit' | 'no pair' | 'missing' | 'few pairs' | 'limit'

/**
 * Is it better, by pairs? It is when so many better by chance would be rarer than what is left of the confidence; it is
 * not when so many worse would be, or when of 5 pairs or more none was better.
 *
 * @example
 * const pairs = { pairs: 5, better: 5, worse: 0, pBetter: 0.03125, pWorse: 1, alpha: 0.05, units: { arm: 5, control: 5 } }
 * gradedVerdict(pairs, { least: 0.5, missing: 0 }) // { answer: 'holds', because: 'better' }
 */
export function gradedVerdict(
  { pairs, better, pBetter, pWorse, alpha, units }: Omit<GradedGain, 'arm'>,
  { least, missing }: Pick<ArmAsked, 'least' | 'missing'>,
): { readonly answer: Verdict; readonly because: Because } {
  const open = (because: Because) => ({ answer: 'not-settled' as const, because })
  if (pairs === 0) return open('no pair')
  if (Math.min(units.arm, units.control) === 1) return open('one unit')
  // 1 − 0.95 is a little more than 0.05 as a number is kept, and 1 ÷ 32 far from it.
  const rare = (p: number) => p <= alpha + 1e-12
  if (rare(pWorse)) return { answer: 'does-not-hold', because: 'worse' }
  if (better === 0 && pairs >= fewestPairs && least > 0)
    return { answer: 'does-not-hold', because: 'none better' }
  if (pairs < fewestPairs) return open('few pairs')
  if (!rare(pBetter)) return open('limit')
  if (missing > 0) return open('missing')
  return { answer: 'holds', because: 'better' }
}

function reasonOf(
  { name, control, units, missing }: ArmAsked,
  { pairs, better, worse, shareBetterUpTo = 0 }: GradedGain,
  because: Because,
): string {
  const subject = sentenceCase(name)
  const of = `${better} of ${counted(pairs, units)}`
  switch (because) {
    case 'better':
      return `${subject} was better than ${control} in ${of}.`
    case 'worse':
      return `${subject} was worse than ${control} in ${worse} of ${counted(pairs, units)}.`
    case 'none better':
      return `${subject} was better than ${control} in none of ${counted(pairs, units)}; up to ${percent(Number(shareBetterUpTo.toFixed(2)))} may still be.`
    case 'one unit':
      return `${subject} or ${control} was done only once, so nothing can be said of it.`
    case 'no pair':
      return `No ${units.one} has a grade of both ${name} and ${control}.`
    case 'missing':
      return `${counted(missing, { one: 'result', many: 'results' })} of ${name} or ${control} ${missing === 1 ? 'is' : 'are'} not recorded yet.`
    case 'few pairs':
      return `Not shown to be better: ${name} was better in ${of}, and ${fewestPairs} or more are needed.`
    case 'limit':
      return `Not shown to be better: ${name} was better in ${of}, which may be chance.`
  }
}

/** How many more pairs would be enough if all of them went the better way; null where fewer than half did so far. */
function morePairs({ pairs, better, alpha }: GradedGain): number | null {
  if (2 * better <= pairs) return null
  for (let more = 1; pairs + more <= mostPairs; more++)
    if (pairs + more >= fewestPairs && binomialAtLeast(better + more, pairs + more) <= alpha + 1e-12)
      return more
  return null
}
