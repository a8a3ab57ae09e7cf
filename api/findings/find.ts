import type { Kysely } from 'kysely'
import type { Finding } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { Problem } from '#api/contract/problem.ts'
import { leadingOf, leastGainOf } from '#api/contract/question.ts'
import { type Wear, wearInWords } from '#api/contract/wear.ts'
import { type Claim, claim } from '#api/judging/claim.ts'
import { estimateOf, saidOn } from '#api/judging/claim-words.ts'
import { conditionOf } from '#api/judging/condition.ts'
import { evidenceOfClaim } from '#api/judging/evidence-of-claim.ts'
import { resultsFor, treatedSkeins } from '#api/judging/judged-rows.ts'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { mainFactor, type Stratum, strataOf } from '#api/judging/strata.ts'
import type { StratumClaim } from '#api/judging/stratum-claim.ts'
import { presentRule } from '#api/trials/present-trial.ts'
import { type FactorWords, spokenOf, wordsOfFactor } from '#api/words/levels.ts'
import type { Database } from '#db/tables.ts'
import { type TrialRecord, trialRecord } from '#db/trial-record.ts'
import { type FactorWithLevels, type LevelRow, ruleInForce } from '#db/trials.ts'
import { cautionsOfClaim } from './cautions-of-claim.ts'
import { assumedCaution, howRead, waitsFor } from './finding-words.ts'
import { levelFindings } from './level-findings.ts'
import { notTested } from './not-tested.ts'
import { plainCondition } from './plain-condition.ts'
import { ruleInWords } from './rule-in-words.ts'
import { skeinFindings } from './skein-findings.ts'
import { stepsOfClaim } from './steps-of-claim.ts'
import { wearCurves } from './wear-curves.ts'
import { otherwiseCaution } from './work-and-plan.ts'

export type AskedWithin = {
  /** The key of one combination of the other factors’ levels; of two factors the id of a level. */
  readonly within?: string | undefined
  /** The part was chosen with the answers in sight, for a verdict or a sheet of its own: it is held to stricter limits. */
  readonly alone?: boolean | undefined
  /** Of all parts together: the tables of this one. */
  readonly show?: string | undefined
  /** Where it was asked for, for a refusal. */
  readonly at?: string | undefined
}

/**
 * The finding of a trial under its rule: computed from its record whenever it is asked for, so that it can never be
 * older. Where more than one thing is varied and no part is asked for, the answer is of all of them together, and the tables
 * are of the first, named in `within`.
 */
export async function findingOf(
  db: Kysely<Database>,
  trialId: string,
  asked: AskedWithin = {},
): Promise<Finding> {
  return findIn(await trialRecord(db, trialId), asked)
}

/** Every part of a finding of all parts together, each with its own tables; of a finding of one, that one. */
export function findParts(record: TrialRecord, finding: Finding, { within }: AskedWithin): Finding[] {
  if (within !== undefined || finding.within === null) return [finding]
  return finding.within.levels.map(({ id: show }) => findIn(record, { show }))
}

export function findIn(record: TrialRecord, asked: AskedWithin = {}): Finding {
  const { trial, rules } = record
  const rule = ruleInForce(rules)
  const conditions = rule?.conditions.map(conditionOf) ?? []
  const factor = mainFactor(record.factors, conditions)
  const strata = strataOf(record.factors, factor)
  const stratum = shownStratum(strata, asked)
  const judged = judgedTrial(record)
  const whole = rule && claim(record, rule, partOf(asked))
  const shown = whole?.strata.find((it) => it.stratum.key === stratum.key)
  const all = asked.within === undefined ? whole : rule && claim(record, rule)
  const main = leadingOf(conditions) ?? plainCondition(record.results)
  const wear: Wear = main?.wear ?? {}
  const words = factor ? wordsOfFactor(factor, record.vessels) : undefined
  const values = main ? resultsFor(judged, main) : new Map()
  const levelled = factor ? treatedSkeins({ trial: judged, factor, stratum }) : []
  const skeins = factor ? skeinFindings(levelled, { trial: judged, factor, wear, values, conditions }) : []
  const ids = new Set(levelled.map(({ skein }) => skein.id))
  const used = record.results.filter(({ skeinId }) => ids.has(skeinId))
  // What was cut from a skein and rubbed or laid wet was tested too.
  const cut = new Set(
    record.skeins.flatMap(({ id, cutFromId }) => (ids.has(id) || ids.has(cutFromId ?? '') ? [id] : [])),
  )
  const done = skeins.filter((skein) => skein.value !== null)
  const noise = shown?.noise
  const isRead = whole?.strata.some(anyRead) ?? false
  const verdict = whole && shown && isRead ? verdictOf(whole, shown, asked.within !== undefined) : null
  return {
    trialId: trial.id,
    title: trial.title,
    question: trial.question,
    invented: trial.invented,
    pattern: trial.pattern,
    rule: rule ? presentRule(rule) : null,
    lockedBefore: whole?.timing === 'before' || (rule?.lockedAt != null && whole?.timing === 'dates-unknown'),
    ruleInWords: rule
      ? ruleInWords(rule, {
          timing: whole?.timing,
          reference: shown?.reference && words?.short(shown.reference),
          conditions,
        })
      : '',
    factor: factor && words ? presentFactor(factor, words) : null,
    within: withinOf({ strata, stratum, all, factor, whole: asked.within === undefined }),
    outcome: main
      ? {
          key: main.outcome,
          label: outcomeKind(main.outcome).label,
          unit: outcomeKind(main.outcome).unit ?? null,
          wear,
          wearInWords: wearInWords(wear),
        }
      : null,
    verdict,
    waitsFor: verdict ? null : waitsFor({ record, factor, rule, main, skeins }, used.length),
    steps: verdict && shown && words ? stepsOfClaim(shown, words) : [],
    levels:
      factor && words
        ? levelFindings(factor, skeins, {
            words,
            confidence: rule?.confidence ?? 0.95,
            noiseFloor: noise?.floor,
          })
        : [],
    sessions: sessionsOf(record, skeins),
    skeins,
    noise: noise
      ? {
          floor: noise.floor,
          rms: noise.rms,
          from: noise.from,
          n: noise.n,
          upperRms: noise.upperRms,
          df: noise.df ?? null,
        }
      : null,
    curve:
      factor && main
        ? wearCurves(factor, skeins, {
            results: record.results,
            wear,
            outcome: main.outcome,
            confidence: rule?.confidence ?? 0.95,
          })
        : [],
    cautions: [
      ...(whole && shown && used.length > 0 ? cautionsOfClaim(whole, shown) : []),
      ...assumedCaution({ record, skeins }),
      ...otherwiseCaution(levelled, judged),
    ],
    gates:
      whole && shown
        ? [...whole.gates, ...shown.gates].map(({ gate, open, says }) => ({ gate, open, says }))
        : [],
    method: [howRead(main), ...(shown ? methodsOf(shown) : [])].filter((sentence) => sentence !== ''),
    counts: {
      skeins: done.length,
      vessels: new Set(done.map((skein) => skein.vesselId)).size,
      sessions: new Set(done.map((skein) => skein.sessionId)).size,
      readings: skeins.reduce((sum, skein) => sum + skein.readings, 0),
      spots: skeins.reduce((sum, skein) => sum + skein.spots, 0),
      lost: skeins.filter((skein) => skein.status === 'lost').length,
      rows: used.length,
    },
    notTested: notTested({
      wears: record.results.flatMap(({ skeinId, wear: worn }) => (cut.has(skeinId) ? [worn] : [])),
      skeins: record.skeins,
      factors: record.factors,
      held: trial.held,
    }),
    evidenceStep:
      whole && shown && verdict
        ? evidenceOfClaim(whole, shown)
        : { step: 'E0', why: 'nothing is judged yet' },
  }
}

/** Whether anything that the rule asks about is read. */
function anyRead({ rows, levels, leading }: StratumClaim): boolean {
  if (rows.some(({ value }) => value !== undefined)) return true
  return levels.some(({ answers }) => answers.some(({ condition, n }) => condition === leading && n > 0))
}

function partOf({ within, alone }: AskedWithin) {
  return within === undefined ? {} : { stratum: within, chosenAfterwards: alone }
}

function shownStratum(
  strata: readonly Stratum[],
  { within, show, at = '#/query/within' }: AskedWithin,
): Stratum {
  const first = strata.find(({ key }) => key === show) ?? strata[0]
  const found = within === undefined ? first : strata.find(({ key }) => key === within)
  if (found && !(within !== undefined && found.key === '')) return found
  if (strata.length === 1) throw new Problem('not-found', 'This trial has no second factor to look within.')
  throw new Problem('not-found', 'The other factor of this trial has no such level.', [
    { pointer: at, detail: `One of ${strata.map(({ key }) => key).join(', ')}.` },
  ])
}

function verdictOf(whole: Claim, shown: StratumClaim, one: boolean): NonNullable<Finding['verdict']> {
  const single = one || whole.strata.length === 1
  const words = whole.words.strata[whole.strata.indexOf(shown)]
  const estimate = single ? estimateOf(shown) : null
  const { leading, window } = shown
  const open = 'unavailable' in window
  const factorWords = wordsOfFactor(whole.factor)
  return {
    answer: whole.answer,
    levelId: single ? (shown.least?.id ?? null) : null,
    subjectId: single ? (shown.subject?.id ?? null) : null,
    headline: whole.words.headline,
    lead: whole.words.lead,
    counts: words?.counts ?? '',
    look: whole.look,
    sessionsIn: Math.min(...whole.strata.map((it) => sessionsIn(it))),
    sessionsPlanned: whole.rule.plannedSessions,
    estimate: estimate && {
      value: estimate.value,
      lower: estimate.lower,
      upper: estimate.upper,
      confidence: estimate.confidence,
      margin:
        leading === undefined
          ? 0
          : leading.question === 'better'
            ? leastGainOf(leading)
            : (leading.margin ?? 0),
      unit: estimate.unit,
    },
    window: open || !single ? null : { from: asLevel(window.from), to: asLevel(window.to) },
    windowText: open
      ? window.unavailable
      : window.from === window.to
        ? `the window: ${factorWords.short(window.from)}`
        : `the window: ${factorWords.short(window.from)} to ${factorWords.short(window.to)}`,
    sessionsMore: single ? moreOf(whole, shown) : null,
    settle: words?.settle ?? '',
  }
}

/** Sessions of the plan that are in; of claims by lot and of batches, the lots of the level that has fewest. */
function sessionsIn({ levels, blocks, leading }: StratumClaim): number {
  if (leading?.byLot || leading?.question === 'to-standard') {
    const lots = levels.flatMap(({ answers }) => (answers[0] ? [answers[0].n] : []))
    return lots.length === 0 ? 0 : Math.min(...lots)
  }
  return blocks.planned.length + blocks.beyond.length
}

function moreOf({ rule }: Claim, it: StratumClaim): number | null {
  if (it.answer !== 'not-settled') return null
  const missing = rule.plannedSessions - sessionsIn(it)
  return missing > 0 ? missing : it.more
}

function withinOf({
  strata,
  stratum,
  all,
  factor,
  whole,
}: {
  readonly strata: readonly Stratum[]
  readonly stratum: Stratum
  readonly all: Claim | undefined
  readonly factor: FactorWithLevels | undefined
  readonly whole: boolean
}): Finding['within'] {
  const [part] = stratum.parts
  if (!part || !factor) return null
  const label = ({ parts }: Stratum) =>
    parts.map(({ factor: of, level }) => wordsOfFactor(of).short(level)).join(', ')
  return {
    factor: stratum.parts.map(({ factor: of }) => wordsOfFactor(of).label).join(', '),
    levelId: stratum.key,
    label: label(stratum),
    spokenOf: stratum.parts.map((it) => spokenOf(it)).join(', '),
    levels: strata.map((it, position) => ({
      id: it.key,
      position,
      label: label(it),
      value: null,
      isReference: false,
    })),
    parts: whole
      ? (all?.strata ?? []).flatMap((it, place) => {
          const words = all?.words.strata[place]
          return words
            ? [
                {
                  levelId: it.stratum.key,
                  label: label(it.stratum),
                  answer: it.answer,
                  headline: saidOn(words),
                  lead: words.lead,
                },
              ]
            : []
        })
      : [],
    others: strata
      .filter((it) => it !== stratum)
      .map((it) => {
        const place = all?.strata.findIndex((other) => other.stratum.key === it.key) ?? -1
        const words = all?.words.strata[place]
        return {
          levelId: it.key,
          label: label(it),
          answer: all?.strata[place]?.answer ?? null,
          headline: words ? saidOn(words) : `${spokenOf(it.parts[0] ?? part)}, no answer yet.`,
        }
      }),
  }
}

function presentFactor(factor: FactorWithLevels, words: FactorWords): Finding['factor'] {
  return {
    id: factor.id,
    key: factor.key,
    label: words.label,
    unit: factor.unit,
    kind: factor.kind,
    stage: factor.stage,
  }
}

function asLevel({ id, position, label, value, isReference }: LevelRow) {
  return { id, position, label, value, isReference }
}

/** How the answers were worked out, each sentence once. */
function methodsOf({ levels }: StratumClaim): string[] {
  return [...new Set(levels.flatMap(({ answers }) => answers.flatMap(({ method }) => method)))]
}

function sessionsOf(record: TrialRecord, skeins: Finding['skeins']): Finding['sessions'] {
  const met = new Set(skeins.map((skein) => skein.sessionId))
  return record.sessions
    .filter((session) => met.has(session.id))
    .map(({ id, label, heldOn }) => ({ id, label, heldOn }))
}
