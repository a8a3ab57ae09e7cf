import type { Step } from '#api/contract/finding.ts'
import { comparisons } from '#api/contract/question.ts'
import { wearInWords, wearKey } from '#api/contract/wear.ts'
import type { Answer } from '#api/judging/answer.ts'
import type { Condition } from '#api/judging/condition.ts'
import type { LevelClaim } from '#api/judging/level-claims.ts'
import type { StratumClaim } from '#api/judging/stratum-claim.ts'
import type { FactorWords } from '#api/words/levels.ts'
import { limitInWords, outcomeInSentence } from '#api/words/outcomes.ts'

/** The name under which a limit travels: one outcome may be asked for after several washes. */
export function limitKey(condition: Condition): string {
  const { outcome, fibre, wear, byLot, question } = condition
  const name = fibre === undefined ? outcome : `${outcome} of ${fibre}`
  if (byLot) return `${name} ${wearKey(wear)}`.trim()
  return question === 'to-standard' ? `${name} to the standard` : name
}

export function limitLabel({ outcome, fibre, wear, byLot }: Condition): string {
  const worn = byLot && Object.keys(wear).length > 0 ? ` after ${wearInWords(wear)}` : ''
  return `${outcomeInSentence(outcome, byLot ? fibre : undefined)}${worn}`
}

/** Every level of a stratum as the table of steps shows it, the reference or the most first. */
export function stepsOfClaim(it: StratumClaim, words: FactorWords): Step[] {
  const down = it.shape === 'ladder' ? it.levels : [...it.levels]
  return down.flatMap((claim) => (claim.level === null ? [] : [stepOf(claim, it, words)]))
}

function stepOf(claim: LevelClaim, it: StratumClaim, words: FactorWords): Step {
  const { level, answers, isReference, answer, afterStop } = claim
  if (level === null) throw new Error('A step is of a level.')
  const main =
    answers.find(({ condition }) => condition === it.leading) ?? answers.find(({ table }) => table !== null)
  const described = answers.find(({ condition }) => condition.against === 'next level')
  const table = main?.table ?? described?.table ?? null
  return {
    levelId: level.id,
    label: words.tick(level),
    reference: isReference,
    // The most has no next level; its limits still counted their sessions.
    n: main && main.n > 0 ? main.n : Math.max(0, ...answers.map(({ n }) => n)),
    mean: table?.mean ?? null,
    extra: isReference ? null : (table?.extra ?? null),
    lower: isReference ? null : (table?.lower ?? null),
    upper: isReference ? null : (table?.upper ?? null),
    netExtra: isReference ? null : (table?.netExtra ?? null),
    netUpper: isReference ? null : (table?.netUpper ?? null),
    deciding: main?.estimate
      ? { value: main.estimate.value, lower: main.estimate.lower, upper: main.estimate.upper }
      : null,
    limits: answers.flatMap((one) => (one.limit === null ? [] : [limitOf(one)])),
    answer,
    afterStop,
    says: saysOf(claim, it, words),
  }
}

function limitOf({ condition, limit }: Answer): Step['limits'][number] {
  if (limit === null) throw new Error('A limit is asked for.')
  return {
    key: limitKey(condition),
    label: limitLabel(condition),
    limit: limitInWords(condition),
    end: condition.end,
    worst: limit.worst,
    worstText: limit.worst === null ? 'not recorded' : limit.worstText,
    all: [...limit.all],
    met: limit.met,
    broken: limit.broken,
    missing: limit.missing,
  }
}

function saysOf(claim: LevelClaim, it: StratumClaim, words: FactorWords): string {
  const { answer, answers, isReference, afterStop } = claim
  if (isReference) return it.shape === 'arms' ? 'what the others are held against' : 'the reference'
  if (afterStop) return 'below the stop: not claimed'
  const deciding = answers.find((one) => one.answer === answer && one.condition.end !== 'high')
  const reason = deciding?.reason ?? ''
  if (answer === 'not-settled') return reason === '' ? 'not settled' : `not settled. ${reason}`
  if (answer === 'does-not-hold')
    return it.shape === 'ladder' ? `${words.enough}. ${reason}`.trim() : reason || 'fails'
  const high = answers.find(({ condition, limit }) => condition.end === 'high' && limit?.broken)
  const good =
    it.shape === 'ladder'
      ? 'enough'
      : it.leading && comparisons.has(it.leading.question)
        ? goodOf(it.leading)
        : 'passes'
  return high ? `${good}; ${outcomeInSentence(high.condition.outcome)} ${high.limit?.worstText ?? ''}` : good
}

function goodOf({ question }: Condition): string {
  return question === 'better' ? 'better' : question === 'alike' ? 'the same' : 'as good'
}
