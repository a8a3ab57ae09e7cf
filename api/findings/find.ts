import type { Kysely } from 'kysely'
import type { Finding } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { type Wear, wearInWords } from '#api/contract/wear.ts'
import { skeinHistoriesOf } from '#api/judging/skein-histories.ts'
import { presentRule } from '#api/trials/present-trial.ts'
import type { Database } from '#db/tables.ts'
import { type ResultSeen, type TrialRecord, trialRecord } from '#db/trial-record.ts'
import { ruleInForce } from '#db/trials.ts'
import { evidenceOf } from './evidence-of.ts'
import { assumedCaution, howRead, lockCautions, waitsFor } from './finding-words.ts'
import { asLevel } from './judge-ladder.ts'
import { type JudgedAlike, judgeWithin } from './judge-within.ts'
import { levelFindings } from './level-findings.ts'
import { headlineOf, type LevelOfOther, spokenOf } from './level-of-other.ts'
import { noiseOfTrial } from './noise-of-trial.ts'
import { notTested } from './not-tested.ts'
import { ruleInWords } from './rule-in-words.ts'
import { lotKeys, mainResults, sideKeys } from './side-values.ts'
import { wearCurves } from './wear-curves.ts'
import { mainCondition, mainFactor, plainCondition, withinOf } from './what-is-judged.ts'
import { wordsOfFactor } from './words-of-factor.ts'
import { otherwiseCaution } from './work-and-plan.ts'

/** Which level of the other factor is asked for, and where it was asked. */
export type AskedWithin = { readonly within?: string | undefined; readonly at?: string | undefined }

/**
 * The finding of a trial under its rule: computed from its results whenever it is asked for, so that it can never be
 * older than them. Where a second factor splits the trial it speaks of one of its levels, says so in its headline, and
 * has the answers of the others beside it.
 */
export async function findingOf(
  db: Kysely<Database>,
  trialId: string,
  asked: AskedWithin = {},
): Promise<Finding> {
  return findIn(await trialRecord(db, trialId), asked)
}

export function findIn(record: TrialRecord, { within: asked, at }: AskedWithin = {}): Finding {
  const { trial, rules } = record
  const rule = ruleInForce(rules)
  const factor = mainFactor(record.factors, rule)
  const within = withinOf(record.factors, factor, { asked, at })
  const histories = skeinHistoriesOf(record)
  const main = mainCondition(rule) ?? plainCondition(record.results)
  const values = main ? mainResults(record.results, main) : new Map<string, ResultSeen>()
  const sides = sideKeys(rule?.conditions ?? [])
  const wear: Wear = main?.wear ?? {}
  const shown = [...sides, ...lotKeys(rule?.conditions ?? [])]
  const noise = main?.outcome === 'dE00' ? noiseOfTrial(record) : undefined
  const words = factor ? wordsOfFactor(factor, record.vessels) : undefined
  const alike = { record, histories, factor, words, rule, main, values, sides, noise, shown }
  const { levelled, skeins, used, judgement } = judgeWithin(alike, within)
  const firstAt = Math.min(...used.map((result) => result.firstRecordedAt.getTime()))
  const lockedBefore = rule?.lockedAt != null && rule.lockedAt.getTime() <= firstAt
  const reference = factor?.levels.find((level) => level.isReference) ?? factor?.levels.at(-1)
  const confidence = rule?.confidence ?? 0.95
  const common = { record, factor, rule, main, skeins }
  const readings = skeins.reduce((sum, skein) => sum + skein.readings, 0)
  const done = skeins.filter((skein) => skein.value !== null && skein.status !== 'lost')

  return {
    trialId: trial.id,
    title: trial.title,
    question: trial.question,
    invented: trial.invented,
    pattern: trial.pattern,
    rule: rule ? presentRule(rule) : null,
    lockedBefore,
    ruleInWords: rule
      ? ruleInWords(rule, { lockedBefore, reference: reference && words?.short(reference) })
      : '',
    factor:
      factor && words
        ? {
            id: factor.id,
            key: factor.key,
            label: words.label,
            unit: factor.unit,
            kind: factor.kind,
            stage: factor.stage,
          }
        : null,
    within: within
      ? {
          factor: wordsOfFactor(within.factor).label,
          levelId: within.level.id,
          label: within.level.label,
          spokenOf: spokenOf(within),
          levels: within.factor.levels.map(asLevel),
          others: within.factor.levels
            .filter((level) => level !== within.level)
            .map((level) => otherLevel(alike, { factor: within.factor, level })),
        }
      : null,
    outcome: main
      ? {
          key: main.outcome,
          label: outcomeKind(main.outcome).label,
          unit: outcomeKind(main.outcome).unit ?? null,
          wear,
          wearInWords: wearInWords(wear),
        }
      : null,
    verdict: judgement?.verdict ?? null,
    waitsFor: judgement ? null : waitsFor(common, used.length),
    steps: [...(judgement?.steps ?? [])],
    levels:
      factor && words ? levelFindings(factor, skeins, { words, confidence, noiseFloor: noise?.floor }) : [],
    sessions: sessionsOf(record, skeins),
    skeins,
    noise: noise ? { floor: noise.floor, rms: noise.rms, from: noise.from, n: noise.n } : null,
    curve:
      factor && main
        ? wearCurves(factor, skeins, { results: record.results, wear, outcome: main.outcome, confidence })
        : [],
    cautions: [
      ...lockCautions(rule, lockedBefore, used.length),
      ...(judgement?.cautions ?? []),
      ...assumedCaution(common),
      ...otherwiseCaution(levelled, alike),
    ],
    method: [howRead(main), ...(judgement?.method ?? [])].filter((sentence) => sentence !== ''),
    counts: {
      skeins: done.length,
      vessels: new Set(done.map((skein) => skein.vesselId)).size,
      sessions: new Set(done.map((skein) => skein.sessionId)).size,
      readings,
      spots: skeins.reduce((sum, skein) => sum + skein.spots, 0),
      lost: skeins.filter((skein) => skein.status === 'lost').length,
      rows: used.length,
    },
    notTested: notTested({
      wears: record.results.map((result) => result.wear),
      skeins: record.skeins,
      factors: record.factors,
      held: trial.held,
    }),
    evidenceStep: evidenceOf(record, { histories, skeins, lockedBefore, noise }),
  }
}

function otherLevel(alike: JudgedAlike, other: LevelOfOther) {
  const { judgement } = judgeWithin(alike, other)
  return {
    levelId: other.level.id,
    label: other.level.label,
    answer: judgement?.verdict.answer ?? null,
    headline: judgement?.verdict.headline ?? headlineOf('No answer yet.', other),
  }
}

function sessionsOf(record: TrialRecord, skeins: Finding['skeins']): Finding['sessions'] {
  const met = new Set(skeins.map((skein) => skein.sessionId))
  return record.sessions
    .filter((session) => met.has(session.id))
    .map(({ id, label, heldOn }) => ({ id, label, heldOn }))
}
