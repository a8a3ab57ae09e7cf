import type { Caution, Finding, SkeinFinding, Step } from '#api/contract/finding.ts'
import { judge } from '#api/science/verdicts/judge.ts'
import type { LadderStep, Level, SideResult } from '#api/science/verdicts/level-rows.ts'
import type { CautionKind, TrialRow, TrialRule, TrialVerdict } from '#api/science/verdicts/trial-verdict.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import { levelName } from './ladder-rows.ts'
import type { NoiseFound } from './noise-of-trial.ts'
import type { SideKey } from './side-values.ts'
import type { FactorWords } from './words-of-factor.ts'

/** A verdict as the page of findings shows it, with its steps. */
export type Judgement = {
  readonly verdict: NonNullable<Finding['verdict']>
  readonly steps: readonly Step[]
  readonly cautions: readonly Caution[]
  readonly method: readonly string[]
}

type Ladder = {
  readonly factor: FactorWithLevels
  readonly words: FactorWords
  readonly rule: TrialRule
  readonly outcome: { readonly label: string; readonly unit: string }
  readonly noise: NoiseFound | undefined
  readonly sides: readonly SideKey[]
  readonly skeins: readonly SkeinFinding[]
}

/** Judges the rows of a ladder, or of two arms, and says it in the words of its factor. */
export function judgeLadder(rows: readonly TrialRow[], ladder: Ladder): Judgement {
  const { factor, words, rule, outcome, noise, sides } = ladder
  const levels = new Map(factor.levels.map((level) => [levelName(factor, level), level]))
  const known = (level: Level): LevelRow => levels.get(level) ?? (factor.levels[0] as LevelRow)
  const result = judge(rows, rule, {
    noise,
    words: {
      level: (level) => words.level(known(level)),
      short: (level) => words.short(known(level)),
      vessel: words.vessel,
      outcome: outcome.label,
      unit: outcome.unit,
      sides: Object.fromEntries(sides.map((side) => [side.key, { label: side.label, value: side.said }])),
    },
  })
  const subject = result.subject === undefined ? undefined : known(result.subject)
  return {
    verdict: verdictOf(result, { known, subject, words, rule, unit: outcome.unit }),
    steps: stepsOf(result, { ...ladder, known }),
    cautions: result.cautions.map(({ kind, title, text }) => ({
      kind: loudness[kind] ?? 'note',
      title,
      text,
    })),
    method: [result.method],
  }
}

const loudness: Partial<Record<CautionKind, Caution['kind']>> = {
  'few-sessions': 'guard',
  'one-unit': 'guard',
  'session-is-level': 'guard',
  'shared-later': 'guard',
  'always-same': 'doubt',
  'loss-by-level': 'doubt',
}

type Known = { readonly known: (level: Level) => LevelRow }

function verdictOf(
  result: TrialVerdict,
  {
    known,
    subject,
    words,
    rule,
    unit,
  }: Known & { subject: LevelRow | undefined; words: FactorWords; rule: TrialRule; unit: string },
): Judgement['verdict'] {
  const step = result.steps.find((it) => it.level === result.subject)
  const { window } = result
  const open = 'unavailable' in window
  return {
    answer: result.verdict,
    levelId: result.least === undefined ? null : known(result.least).id,
    subjectId: subject?.id ?? null,
    headline: result.sentences.headline,
    lead: result.sentences.lead,
    counts: result.sentences.countsLine,
    look: result.look,
    sessionsIn: result.sessionsIn,
    sessionsPlanned: result.plannedSessions,
    estimate:
      step?.extra === undefined || step.lower === undefined || step.upper === undefined
        ? null
        : {
            value: step.extra,
            lower: step.lower,
            upper: step.upper,
            confidence: 2 * result.confidence - 1,
            margin: rule.margin,
            unit,
          },
    window: open ? null : { from: asLevel(known(window.from)), to: asLevel(known(window.to)) },
    windowText: open
      ? window.unavailable
      : window.from === window.to
        ? `the window: ${words.short(known(window.from))}`
        : `the window: ${words.short(known(window.from))} to ${words.short(known(window.to))}`,
    sessionsMore: result.settle?.sessionsMore ?? null,
    settle: result.settle?.why ?? '',
  }
}

function stepsOf(result: TrialVerdict, ladder: Ladder & Known): Step[] {
  const { known } = ladder
  const reference = known(result.reference)
  const count = result.counts.find((it) => it.level === result.reference)
  const nothing = { extra: null, lower: null, upper: null, netExtra: null, netUpper: null }
  const first: Step = {
    levelId: reference.id,
    label: ladder.words.tick(reference),
    reference: true,
    n: count?.units ?? 0,
    mean: result.referenceMean ?? null,
    ...nothing,
    limits: limitsOf(result.referenceLimits, reference, ladder),
    answer: null,
    afterStop: false,
    says: 'the reference',
  }
  let stopped = false
  const others = result.steps.map((step): Step => {
    const level = known(step.level)
    const afterStop = stopped
    if (step.answer !== 'holds') stopped = true
    return {
      levelId: level.id,
      label: ladder.words.tick(level),
      reference: false,
      n: step.n,
      mean: step.mean ?? null,
      extra: step.extra ?? null,
      lower: step.lower ?? null,
      upper: step.upper ?? null,
      netExtra: step.net?.extra ?? null,
      netUpper: step.net?.upper ?? null,
      limits: limitsOf(step.limits, level, ladder),
      answer: step.answer,
      afterStop,
      says: saysOf(step, afterStop, ladder.sides),
    }
  })
  return [first, ...others]
}

function saysOf(step: LadderStep, afterStop: boolean, sides: readonly SideKey[]): string {
  if (afterStop) return 'after the stop'
  if (step.answer === 'does-not-hold') return 'does not hold: stop'
  if (step.answer === 'not-settled') return 'not settled: stop'
  const high = step.limits.find((limit) => limit.end === 'high' && limit.broken)
  if (!high || high.worst === undefined) return 'holds'
  const side = sides.find((it) => it.key === high.side)
  return `holds on colour; ${side?.label ?? high.side} ${side?.said(high.worst) ?? high.worst}`
}

function limitsOf(limits: readonly SideResult[], level: LevelRow, { sides, skeins }: Ladder): Step['limits'] {
  return limits.flatMap((limit) => {
    const side = sides.find((it) => it.key === limit.side)
    if (!side) return []
    const mine = skeins.filter((skein) => skein.levelId === level.id && skein.status !== 'lost')
    return [
      {
        key: limit.side,
        label: side.label,
        limit: side.limit,
        end: limit.end,
        worst: limit.worst ?? null,
        worstText: limit.worst === undefined ? 'not recorded' : side.said(limit.worst),
        all: mine.flatMap((skein) => skein.side[limit.side]?.text ?? []),
        met: limit.met && limit.missing === 0,
        broken: limit.broken,
        missing: limit.missing,
      },
    ]
  })
}

export function asLevel({ id, position, label, value, isReference }: LevelRow) {
  return { id, position, label, value, isReference }
}
