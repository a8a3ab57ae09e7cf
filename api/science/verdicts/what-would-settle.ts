import { blocksNeeded } from './blocks-needed.ts'
import { counted, listed, sentenceCase } from './figure.ts'
import type { Judged } from './judged.ts'
import { fewestBlocks } from './least-level-that-holds.ts'
import type { LadderStep, Needed } from './level-rows.ts'
import type { TrialVerdict } from './trial-verdict.ts'
import { blockWords, shortOf, sideLabel } from './words-of-trial.ts'

/**
 * Why a trial is not settled, and about how many more sessions would settle it, where sessions would.
 *
 * @example
 * whatWouldSettle({ rule: { plannedSessions: 4 }, sessionsIn: 2, words: { level: String } }).sessionsMore // 2
 */
export function whatWouldSettle(it: Judged): NonNullable<TrialVerdict['settle']> {
  const { rule, result, words, sessionsIn } = it
  const block = blockWords(words)
  if (sessionsIn < rule.plannedSessions)
    return {
      sessionsMore: rule.plannedSessions - sessionsIn,
      why: `The plan asks for ${counted(rule.plannedSessions, block)}; ${sessionsIn} ${sessionsIn === 1 ? 'is' : 'are'} in. What is missing is the rest of the plan.`,
    }
  if (it.sessionIsLevel)
    return { why: `Each ${block.one} held one level only, so a level cannot be told from its ${block.one}.` }
  const step = result.steps[0]
  if (step === undefined) return { why: 'No level below the reference was tried.' }
  const single = [step.level, result.reference].filter((level) => it.oneUnit.includes(String(level)))
  if (single.length > 0)
    return {
      why: `${sentenceCase(listed(single.map((level) => shortOf(words, level))))} had one ${it.unit.kind === 'vessel' ? (words.vessel?.one ?? 'vessel') : it.unit.kind} in the whole trial: one unit, of which nothing can be claimed.`,
    }
  if (it.cannotSeeMargin && !blank(step))
    return {
      why: `Your way of measuring cannot see this margin${it.noise?.readingsNeeded === undefined ? '' : `: it takes ${it.noise.readingsNeeded} readings of each skein`}.`,
    }
  const missing = [...step.limits, ...result.referenceLimits].filter(
    (limit) => limit.end === 'low' && (limit.missing > 0 || limit.worst === undefined),
  )
  if (missing.length > 0)
    return {
      why: `${sentenceCase(listed([...new Set(missing.map((limit) => sideLabel(words, limit.side)))]))} must be recorded in every ${block.one}.`,
    }
  if (step.noSpread) return { why: step.unavailable ?? 'No spread was seen at all.' }
  return moreSessions(it, step)
}

function blank(step: LadderStep): boolean {
  return step.n === 0
}

function moreSessions({ rule, result }: Judged, step: LadderStep): NonNullable<TrialVerdict['settle']> {
  const options = {
    margin: rule.margin,
    confidence: result.confidence,
    sdPlanned: rule.sdPlanned,
    pooled: result.method === 'pooled',
  }
  // Raw and net must both come under the margin, so the one that needs more decides.
  const needed: Needed[] = [step, ...(step.net === undefined ? [] : [step.net])].map((loss) =>
    blocksNeeded(loss, options),
  )
  let most = 0
  for (const it of needed) {
    if ('unavailable' in it) return step.n < fewestBlocks ? atLeastThree(step.n) : { why: it.unavailable }
    most = Math.max(most, it.blocks)
  }
  return {
    sessionsMore: Math.max(1, most - step.n),
    why: `If the extra loss is truly what was seen, ${most} in all settle it in 8 trials of 10.`,
  }
}

function atLeastThree(n: number): NonNullable<TrialVerdict['settle']> {
  return {
    sessionsMore: fewestBlocks - n,
    why: 'Fewer than three never make a claim; three may not be enough.',
  }
}
