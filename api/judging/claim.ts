import { confidenceOfLook } from '#api/science/design/confidence-of-look.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import type { JournalSeen, TrialRecord } from '#db/trial-record.ts'
import type { FactorWithLevels, RuleRow } from '#db/trials.ts'
import { type ClaimWords, wordsOfClaim } from './claim-words.ts'
import { type Condition, conditionOf } from './condition.ts'
import { type GateFound, journalGate, type RuleTiming, ruleGate, ruleTiming } from './gates.ts'
import { changesAfterReading, recordWithoutChanges } from './journal.ts'
import { type JudgedTrial, judgedTrial } from './judged-trial.ts'
import { worstOf } from './level-claims.ts'
import { lookOf } from './looks.ts'
import { mainFactor, type Stratum, strataOf } from './strata.ts'
import { type StratumClaim, stratumClaim } from './stratum-claim.ts'

/** Everything that a trial says under its rule. Every headline, verdict, line, sheet and file is printed from one. */
export type Claim = {
  readonly trial: JudgedTrial
  readonly rule: RuleRow
  readonly conditions: readonly Condition[]
  readonly factor: FactorWithLevels
  /** Every combination of the other factors, or the one that was asked for. */
  readonly strata: readonly StratumClaim[]
  /** How many there are in the trial, shown or not. */
  readonly strataInAll: number
  /** The worst of all strata. */
  readonly answer: Verdict
  readonly look: number
  /** One-sided, as it was used: after looks, and for one stratum chosen afterwards. */
  readonly confidence: number
  readonly timing: RuleTiming
  readonly gates: readonly GateFound[]
  /** What was changed of what is judged after the first reading, oldest first. */
  readonly changes: readonly JournalSeen[]
  /** The answer without those changes, where it differs. */
  readonly without: WithoutChanges | undefined
  readonly words: ClaimWords
}

/** What the same rule says of the record as it stood when the first reading was written down. */
export type WithoutChanges = {
  readonly answer: Verdict
  readonly headline: string
  /** Its answer is worse than that of the record as it stands, so it stands in the headline. */
  readonly worse: boolean
}

export type ClaimOptions = {
  /** The key of one stratum: the claim is of that one alone. */
  readonly stratum?: string | undefined
  /**
   * The stratum was chosen with the answers in sight (a sheet of one of several), so it is judged at 0.05 ÷ strata:
   * choosing the one that holds would be false too often.
   */
  readonly chosenAfterwards?: boolean | undefined
}

/**
 * The claim of a trial under a rule. Pure: the same record gives the same claim, on the server and in a reader’s browser.
 * Undefined where nothing is varied or nothing was read.
 */
export function claim(
  record: TrialRecord,
  rule: RuleRow,
  { stratum: asked, chosenAfterwards = false }: ClaimOptions = {},
): Claim | undefined {
  const conditions = rule.conditions.map(conditionOf).filter(isAsked)
  const factor = mainFactor(record.factors, conditions)
  if (!factor || conditions.length === 0) return undefined
  const trial = judgedTrial(record)
  const all = strataOf(record.factors, factor)
  const shown = asked === undefined ? all : all.filter(({ key }) => key === asked)
  const firstReadAt = firstRead(record)
  if (firstReadAt === undefined || shown.length === 0) return undefined
  const look = lookOf(rule, record.rules, firstReadAt)
  const atLook = confidenceOfLook(rule.confidence, look)
  const confidence = chosenAfterwards && all.length > 1 ? 1 - (1 - atLook) / all.length : atLook
  const locked = rule.lockedAt !== null
  const strata = shown.map((stratum: Stratum) =>
    stratumClaim({ trial, rule, conditions, factor, stratum, confidence, locked }),
  )
  const timing = ruleTiming(
    rule,
    trial,
    strata.flatMap(({ rows }) => rows),
  )
  const changes = changesAfterReading(record.journal)
  const answer = worstOf(strata.map((it) => it.answer))
  const other =
    changes.length === 0
      ? undefined
      : claim(recordWithoutChanges(record), rule, { stratum: asked, chosenAfterwards })
  const without = other && difference(other, { strata, answer })
  const gates = [ruleGate(timing), journalGate(changes, without)]
  const found = {
    trial,
    rule,
    conditions,
    factor,
    strata,
    strataInAll: all.length,
    answer: without?.worse ? without.answer : answer,
    look,
    confidence,
    timing,
    gates,
    changes,
    without,
  }
  return { ...found, words: wordsOfClaim(found) }
}

const rank: readonly Verdict[] = ['does-not-hold', 'not-settled', 'holds']

/** Where the answer without the changes is another: worse when it says less, or holds from a higher level only. */
function difference(
  other: Claim,
  { strata, answer }: Pick<Claim, 'strata' | 'answer'>,
): WithoutChanges | undefined {
  const same =
    other.answer === answer &&
    other.strata.every(
      (it, place) => it.answer === strata[place]?.answer && it.least?.id === strata[place]?.least?.id,
    )
  if (same) return undefined
  const further = other.strata.some(
    (it, place) => it.answer === 'holds' && (it.least?.position ?? 0) > (strata[place]?.least?.position ?? 0),
  )
  const worse = rank.indexOf(other.answer) < rank.indexOf(answer) || (other.answer === answer && further)
  return { answer: other.answer, headline: other.words.headline, worse }
}

/** A limit that was left blank asks nothing. */
function isAsked({ question, against, margin, atLeast, atMost }: Condition): boolean {
  if (question !== 'within-limit') return true
  return atLeast !== undefined || atMost !== undefined || (against === 'next level' && margin !== undefined)
}

/** When the first result of a treated skein was known, by the server’s clock or the person’s. */
function firstRead({ results }: TrialRecord): number | undefined {
  const times = results.map(({ firstRecordedAt }) => firstRecordedAt.getTime())
  return times.length === 0 ? undefined : Math.min(...times)
}
