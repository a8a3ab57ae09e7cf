import type { Kysely } from 'kysely'
import type { Caution, Finding } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { Problem } from '#api/contract/problem.ts'
import { type Wear, wearInWords, wearKey } from '#api/contract/wear.ts'
import { presentRule } from '#api/trials/present-trial.ts'
import type { Database, RuleCondition } from '#db/tables.ts'
import { type ResultSeen, type TrialRecord, trialRecord } from '#db/trial-record.ts'
import { type FactorWithLevels, type RuleRow, ruleInForce } from '#db/trials.ts'
import { evidenceOf } from './evidence-of.ts'
import { judgeAcid } from './judge-acid.ts'
import { asLevel, type Judgement, judgeLadder } from './judge-ladder.ts'
import { judgeLots } from './judge-lots.ts'
import { ladderRows, ladderRule, levelledSkeins } from './ladder-rows.ts'
import { levelFindings } from './level-findings.ts'
import { livesOf } from './lives.ts'
import { lookOfRule } from './look-of-rule.ts'
import { noiseOfTrial } from './noise-of-trial.ts'
import { notTested } from './not-tested.ts'
import { ruleInWords } from './rule-in-words.ts'
import { lotKeys, mainResults, sideKeys } from './side-values.ts'
import { skeinFindings } from './skein-findings.ts'
import { wearCurves } from './wear-curves.ts'
import { wordsOfFactor } from './words-of-factor.ts'

/**
 * The finding of a trial under its rule: computed from its results whenever it is asked for, so that it can never be
 * older than them. Where a second factor splits the trial, within one of its levels.
 */
export async function findingOf(
  db: Kysely<Database>,
  trialId: string,
  options: { within?: string | undefined } = {},
): Promise<Finding> {
  return findIn(await trialRecord(db, trialId), options)
}

export function findIn(
  record: TrialRecord,
  { within: withinId }: { within?: string | undefined } = {},
): Finding {
  const { trial, rules } = record
  const rule = ruleInForce(rules)
  const factor = mainFactor(record.factors, rule)
  const within = withinOf(record.factors, factor, withinId)
  const lives = livesOf(record)
  const main = mainCondition(rule) ?? plainCondition(record.results)
  const values = main ? mainResults(record.results, main) : new Map<string, ResultSeen>()
  const levelled = factor ? levelledSkeins(record, lives, factor, within) : []
  const sides = sideKeys(rule?.conditions ?? [])
  const wear: Wear = main?.wear ?? {}
  const shown = [...sides, ...lotKeys(rule?.conditions ?? [])]
  const skeins = factor ? skeinFindings(levelled, { record, lives, factor, wear, values, sides: shown }) : []
  const used = record.results.filter((result) => levelled.some(({ skein }) => skein.id === result.skeinId))
  const firstAt = Math.min(...used.map((result) => result.firstRecordedAt.getTime()))
  const lockedBefore = rule?.lockedAt != null && rule.lockedAt.getTime() <= firstAt
  const noise = main?.outcome === 'dE00' ? noiseOfTrial(record) : undefined
  const words = factor ? wordsOfFactor(factor, record.vessels) : undefined
  const reference = factor?.levels.find((level) => level.isReference) ?? factor?.levels.at(-1)
  const confidence = rule?.confidence ?? 0.95
  const common = { record, lives, factor, words, rule, main, skeins, levelled, values, sides, noise }
  const judgement =
    rule && factor && values.size + sides.length > 0 && used.length > 0 ? judged(common as Judged) : undefined
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
          levelId: within.levelId,
          label: within.factor.levels.find((level) => level.id === within.levelId)?.label ?? '',
          levels: within.factor.levels.map(asLevel),
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
    evidenceStep: evidenceOf(record, { lives, skeins, lockedBefore, noise }),
  }
}

type Common = {
  readonly record: TrialRecord
  readonly factor: FactorWithLevels | undefined
  readonly rule: RuleRow | undefined
  readonly main: RuleCondition | undefined
  readonly skeins: Finding['skeins']
}
export type Judged = {
  readonly record: TrialRecord
  readonly lives: ReturnType<typeof livesOf>
  readonly factor: FactorWithLevels
  readonly words: ReturnType<typeof wordsOfFactor>
  readonly rule: RuleRow
  readonly main: RuleCondition | undefined
  readonly skeins: Finding['skeins']
  readonly levelled: ReturnType<typeof levelledSkeins>
  readonly values: ReadonlyMap<string, ResultSeen>
  readonly sides: ReturnType<typeof sideKeys>
  readonly noise: ReturnType<typeof noiseOfTrial>
}

/** Which engine answers is said by the rule’s own conditions. */
function judged(it: Judged): Judgement | undefined {
  const { conditions } = it.rule
  const statistic = it.main?.statistic
  if (conditions.some((condition) => condition.statistic === 'worst lot')) return judgeLots(it)
  if (conditions.some((condition) => condition.against === 'next level')) return judgeAcid(it)
  if (statistic !== 'upper limit' || !it.main || it.factor.levels.length < 2) return undefined
  const { factor, lives, main, rule, sides, values, record, levelled, skeins, words, noise } = it
  const rows = ladderRows(levelled, { lives, factor, values, sides, results: record.results, read: skeins })
  if (!rows.some((row) => row.value !== undefined)) return undefined
  const sessionOf = new Map(rows.map((row) => [row.skein, row.session]))
  const look = lookOfRule(rule, record.rules, {
    results: [...values.values()],
    sessionOf: (result) => sessionOf.get(result.skeinId),
  })
  const kind = outcomeKind(main.outcome)
  return judgeLadder(rows, {
    factor,
    words,
    rule: ladderRule(rule, main, { factor, block: record.trial.block, look, sides }),
    outcome: {
      label: main.outcome === 'dE00' ? 'extra loss' : `difference in ${kind.label.toLowerCase()}`,
      unit: kind.unit ?? '',
    },
    noise,
    sides,
    skeins,
  })
}

/** The factor that the finding is about: the ordered one where several are varied, else the first. */
function mainFactor(
  factors: readonly FactorWithLevels[],
  rule: RuleRow | undefined,
): FactorWithLevels | undefined {
  if (rule?.conditions.some((condition) => condition.statistic === 'worst lot')) return factors[0]
  return factors.find((factor) => factor.ordered && factor.levels.length > 1) ?? factors[0]
}

function withinOf(
  factors: readonly FactorWithLevels[],
  main: FactorWithLevels | undefined,
  asked: string | undefined,
) {
  const others = factors.filter((factor) => factor !== main && factor.levels.length > 0)
  const [other] = others
  if (!other) {
    if (asked) throw new Problem('not-found', 'This trial has no second factor to look within.')
    return undefined
  }
  const level = asked === undefined ? other.levels[0] : other.levels.find((it) => it.id === asked)
  if (!level)
    throw new Problem('not-found', 'The other factor of this trial has no such level.', [
      { pointer: '#/query/within', detail: `One of ${other.levels.map((it) => it.id).join(', ')}.` },
    ])
  return { factor: other, levelId: level.id }
}

function mainCondition(rule: RuleRow | undefined): RuleCondition | undefined {
  const conditions = rule?.conditions ?? []
  return (
    conditions.find((it) => it.statistic === 'upper limit') ??
    conditions.find((it) => it.statistic !== 'every unit') ??
    conditions[0]
  )
}

/** Which outcome a picture shows while no rule names one. */
const tellsMost = [
  'dE00',
  'spread',
  'light rating',
  'dye left',
  'staining dE76',
  'staining',
  'change grade',
  'lightness',
]

/** Without a rule the pictures still show something: the loss at the furthest wear that was read, else what tells most. */
function plainCondition(results: readonly ResultSeen[]): RuleCondition | undefined {
  const rank = ({ kind }: ResultSeen) =>
    tellsMost.includes(kind) ? tellsMost.indexOf(kind) : tellsMost.length
  const [some] = results
    .filter((result) => result.kind !== 'dE00' || result.wearKey !== '')
    .sort((a, b) => rank(a) - rank(b) || (b.wearAmount ?? 0) - (a.wearAmount ?? 0))
  if (!some) return undefined
  return {
    outcome: some.kind,
    wear: some.wear,
    end: 'low',
    against: 'reference',
    statistic: 'mean',
    direction: 'smaller is better',
  }
}

function waitsFor({ factor, rule, record, main, skeins }: Common, used: number): string {
  if (record.factors.length === 0 || !factor)
    return 'No readings yet. Paste a table, or read the first skein.'
  if (used === 0) return 'No readings yet. Paste a table, or read the first skein.'
  const read = skeins.filter((skein) => skein.value !== null).length
  const instead = read === 0 && main ? readAfter(record, main) : []
  if (main && instead.length > 0)
    return `The rule asks for readings after ${wearInWords(main.wear)}; these were read after ${instead.join(', after ')}. Read them as the rule says, or write a new edition of it.`
  if (read === 0)
    return `${read} of ${skeins.length} skeins are read. Findings begin with the first after-reading.`
  if (!rule) return 'No rule yet. Write one on the plan: without it there are pictures, and no verdict.'
  return `The rule has no condition that can be judged for ${main ? outcomeKind(main.outcome).label.toLowerCase() : 'this trial'}.`
}

/** After what the outcome of the rule was read, where it was read after something else than the rule says. */
function readAfter({ results }: TrialRecord, { outcome, wear }: RuleCondition): string[] {
  const worn = results.filter(
    (it) => it.kind === outcome && it.wearKey !== '' && it.wearKey !== wearKey(wear),
  )
  return [...new Set(worn.map((it) => wearInWords(it.wear)))].slice(0, 3)
}

function sessionsOf(record: TrialRecord, skeins: Finding['skeins']): Finding['sessions'] {
  const met = new Set(skeins.map((skein) => skein.sessionId))
  return record.sessions
    .filter((session) => met.has(session.id))
    .map(({ id, label, heldOn }) => ({ id, label, heldOn }))
}

function lockCautions(rule: RuleRow | undefined, lockedBefore: boolean, used: number): Caution[] {
  if (!rule || used === 0 || lockedBefore) return []
  if (rule.lockedAt === null) {
    return [
      {
        kind: 'guard',
        title: 'The rule is not locked',
        text: 'A rule chosen after the result proves little. Lock it before the readings; a later change is allowed and shown.',
      },
    ]
  }
  return [
    {
      kind: 'doubt',
      title: 'The rule came after the first reading',
      text: 'It was locked when results were there already. Every sheet says so.',
    },
  ]
}

function assumedCaution({ record, skeins }: Common): Caution[] {
  const used = new Set(skeins.map((skein) => skein.vesselId))
  const assumed = record.vessels.filter((vessel) => vessel.assumed && used.has(vessel.id)).length
  if (assumed === 0) return []
  return [
    {
      kind: 'doubt',
      title: 'Vessels were taken for granted',
      text: `Each piece is taken to have had its own vessel (${assumed} of them): was that so? If pieces shared one, they count once.`,
    },
  ]
}

function howRead(main: RuleCondition | undefined): string {
  if (main?.outcome !== 'dE00') return ''
  return 'Spots were averaged to L*, a*, b* for each reading; ΔE00 was taken between a skein’s own two readings.'
}
