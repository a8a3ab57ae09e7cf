import { comparisons, leadingOf } from '#api/contract/question.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { wordsOfFactor } from '#api/words/levels.ts'
import type { FactorWithLevels, LevelRow, RuleRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'
import type { Condition } from './condition.ts'
import { controlsOf } from './controls.ts'
import { engines } from './engines.ts'
import { controlsGate, type GateFound, lossesGate, noiseGate, planGate, unitsGate } from './gates.ts'
import { type JudgedRow, judgedRows } from './judged-rows.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { hasNoise, isHighEnd, type LevelClaim, type Shape, shapeOf, worstOf } from './level-claims.ts'
import { measuredAlike } from './measured-alike.ts'
import type { Noise } from './noise.ts'
import { noiseOf } from './noise.ts'
import { type BlocksIn, blocksIn, testedByChance, withinPlan } from './plan-done.ts'
import type { Stratum } from './strata.ts'

export type Window = { readonly from: LevelRow; readonly to: LevelRow } | { readonly unavailable: string }

/** What the rule says of one combination of the other factors’ levels. */
export type StratumClaim = {
  readonly stratum: Stratum
  readonly shape: Shape
  /** A ladder from the most down; arms and the rest in their own order, the reference among them. */
  readonly levels: readonly LevelClaim[]
  readonly answer: Verdict
  /** Of a ladder: the least level that holds with all above it. */
  readonly least: LevelRow | undefined
  /** The level that the headline speaks of first. */
  readonly subject: LevelRow | undefined
  readonly reference: LevelRow | undefined
  readonly referenceBreaks: boolean
  readonly window: Window
  readonly gates: readonly GateFound[]
  readonly blocks: BlocksIn
  readonly noise: Noise | undefined
  readonly leading: Condition | undefined
  readonly rows: readonly JudgedRow[]
  /** About how many more units would settle the subject; null where that cannot be said. */
  readonly more: number | null
}

export type StratumAsked = {
  readonly trial: JudgedTrial
  readonly rule: RuleRow
  readonly conditions: readonly Condition[]
  readonly factor: FactorWithLevels
  readonly stratum: Stratum
  readonly confidence: number
  readonly locked: boolean
}

const units = {
  session: { one: 'session', many: 'sessions' },
  vessel: { one: 'card', many: 'cards' },
  parent: { one: 'skein', many: 'skeins' },
}

/** Judges one stratum: every condition of every level, through the gates, then the levels together. */
export function stratumClaim(it: StratumAsked): StratumClaim {
  const { trial, rule, conditions, factor } = it
  const levels = factor.levels
  const leading = leadingOf(conditions)
  const shape = shapeOf(conditions, { ordered: factor.ordered, levels: levels.length })
  const reference = referenceOf(factor, { shape, conditions })
  const rowsOf = (condition: Condition) =>
    judgedRows(askedOf(it, condition, { trial, reference, noise: undefined }))
  const rows = leading ? rowsOf(leading) : []
  const anyRead = conditions.filter(({ byLot }) => !byLot).flatMap(rowsOf)
  const blocks = blocksIn(trial, anyRead.length > 0 ? anyRead : rows, rule.plannedSessions)
  const planned = withinPlan(trial, rows, blocks)
  const noisy = conditions.find(hasNoise)
  const noise = noisy ? noiseOf(trial, noisy) : undefined

  const found = conditions.flatMap((condition) =>
    engines[condition.question](
      askedOf(it, condition, {
        trial: testedByChance.has(condition.question) ? planned : trial,
        reference,
        noise: hasNoise(condition) ? noise : undefined,
      }),
    ),
  )
  const gates = gatesOf(it, { shape, rows, blocks, noise, noisy, leading })
  const gated = found.map((answer) => throughGates(answer, { gates, rule, locked: it.locked }))
  return together({ it, shape, reference, gates, gated, blocks, noise, leading, rows })
}

/** Lots, batches and days of measuring are counted by the answer itself, not by sessions of the work. */
const countsOwnUnits = ({ byLot, question }: Condition): boolean =>
  byLot || question === 'to-standard' || question === 'sees'

function askedOf(
  { rule, factor, stratum, confidence }: StratumAsked,
  condition: Condition,
  more: { trial: JudgedTrial; reference: LevelRow | undefined; noise: Noise | undefined },
): Asked {
  return {
    ...more,
    condition,
    stratum,
    factor,
    levels: factor.levels,
    planned: rule.plannedSessions,
    confidence,
    method: rule.method,
  }
}

/** The chosen reference; of a ladder without one the most that was tried. Arms without one have none. */
function referenceOf(
  { levels, ordered }: FactorWithLevels,
  { shape, conditions }: { shape: Shape; conditions: readonly Condition[] },
): LevelRow | undefined {
  const chosen = levels.find((level) => level.isReference)
  if (chosen || !conditions.some(({ question }) => comparisons.has(question))) return chosen
  return shape === 'ladder' && ordered ? levels.at(-1) : undefined
}

function gatesOf(
  { trial, rule, conditions, factor }: StratumAsked,
  {
    shape,
    rows,
    blocks,
    noise,
    noisy,
    leading,
  }: {
    shape: Shape
    rows: readonly JudgedRow[]
    blocks: BlocksIn
    noise: Noise | undefined
    noisy: Condition | undefined
    leading: Condition | undefined
  },
): GateFound[] {
  const words = wordsOfFactor(factor, trial.record.vessels)
  const compares = shape === 'ladder' || shape === 'arms'
  const byUnit = conditions.every(countsOwnUnits)
  return [
    // Of lots and batches each level counts its own, below.
    ...(byUnit ? [] : [planGate(blocks, rule.plannedSessions, units[trial.record.trial.block])]),
    controlsGate(controlsOf(trial, conditions, noise)),
    ...noiseGate(
      conditions,
      noise,
      noisy ? measuredAlike(trial, noisy) : { alike: true, typed: 0, found: [] },
    ),
    ...unitsGate(rows, factor.levels, {
      trial,
      compares: compares && leading !== undefined && comparisons.has(leading.question),
      name: words.short,
      vessel: words.vessel,
    }),
    ...(compares ? [lossesGate(rows, factor.levels, words.short)] : []),
  ]
}

/** An answer as the gates let it through. What stops a “holds” says so in place of its own reason. */
function throughGates(
  answer: Answer,
  { gates, rule, locked }: { gates: readonly GateFound[]; rule: RuleRow; locked: boolean },
): Answer {
  const { condition } = answer
  const stop = gates.find(({ stops }) => stops === 'every answer')
  if (stop && answer.answer !== 'not-settled') return { ...answer, answer: 'not-settled', reason: stop.says }
  const ofUnits = countsOwnUnits(condition)
  if (answer.answer === 'holds') {
    if (!locked) return { ...answer, answer: 'not-settled', reason: 'The rule is not locked.' }
    if (ofUnits && answer.n < rule.plannedSessions)
      return {
        ...answer,
        answer: 'not-settled',
        reason: `${answer.n} of ${rule.plannedSessions} planned ${answer.units.many} are in.`,
      }
    const closed = gates.find(({ stops }) => stops === 'holds')
    if (closed) return { ...answer, answer: 'not-settled', reason: closed.says }
  }
  // Tested by chance: before the plan is done nothing is said, whichever way.
  const plan = gates.find(({ gate, open }) => gate === 'plan' && !open)
  if (plan && testedByChance.has(condition.question) && answer.answer === 'does-not-hold')
    return { ...answer, answer: 'not-settled', reason: plan.says }
  return answer
}

type Together = {
  readonly it: StratumAsked
  readonly shape: Shape
  readonly reference: LevelRow | undefined
  readonly gates: readonly GateFound[]
  readonly gated: readonly Answer[]
  readonly blocks: BlocksIn
  readonly noise: Noise | undefined
  readonly leading: Condition | undefined
  readonly rows: readonly JudgedRow[]
}

function together({ it, shape, reference, gated, leading, ...rest }: Together): StratumClaim {
  const { factor, stratum, conditions } = it
  const compares = conditions.some(({ question }) => comparisons.has(question))
  const of = (level: LevelRow | null) => gated.filter(({ levelId }) => levelId === (level?.id ?? null))
  const claimOf = (level: LevelRow | null): LevelClaim => {
    const answers = of(level)
    const isReference = level !== null && compares && level.id === reference?.id
    const low = answers.filter(
      (answer) => !isHighEnd(answer) && !(isReference && comparisons.has(answer.condition.question)),
    )
    const high = answers.filter(isHighEnd)
    return {
      level,
      isReference,
      answers,
      answer: isReference ? null : worstOf(low.map(({ answer }) => answer)),
      afterStop: false,
      closed: high.some(({ limit }) => limit === null || !limit.met || limit.missing > 0),
    }
  }
  const common = { ...rest, stratum, shape, leading, reference }
  if (shape === 'whole') {
    const whole = claimOf(null)
    return {
      ...common,
      levels: [whole],
      answer: whole.answer ?? 'not-settled',
      least: undefined,
      subject: undefined,
      referenceBreaks: false,
      window: { unavailable: '' },
      more: whole.answers[0]?.more ?? null,
    }
  }
  if (shape === 'ladder') return ladder({ factor, reference, claimOf, compares, common })
  const all = factor.levels.map(claimOf)
  const judged = all.filter(({ isReference, answers }) => !isReference && answers.length > 0)
  const holding = judged.filter(({ answer }) => answer === 'holds')
  const subject =
    judged.find(({ answer }) => answer === 'does-not-hold') ??
    judged.find(({ answer }) => answer === 'not-settled') ??
    judged[0]
  return {
    ...common,
    levels: all,
    answer: worstOf(judged.map(({ answer }) => answer ?? 'not-settled')),
    least: judged.length === 1 && holding.length === 1 ? (judged[0]?.level ?? undefined) : undefined,
    subject: subject?.level ?? undefined,
    referenceBreaks: false,
    window: { unavailable: '' },
    more: subject?.answers.find(({ more }) => more !== null)?.more ?? null,
  }
}

/** From the most down, in an order that was fixed beforehand; the first level that does not hold ends the claim. */
function ladder({
  factor,
  reference,
  claimOf,
  compares,
  common,
}: {
  factor: FactorWithLevels
  reference: LevelRow | undefined
  claimOf: (level: LevelRow) => LevelClaim
  compares: boolean
  common: Pick<
    StratumClaim,
    'stratum' | 'shape' | 'leading' | 'reference' | 'gates' | 'blocks' | 'noise' | 'rows'
  >
}): StratumClaim {
  const least = factor.levels
  const place = compares && reference ? least.indexOf(reference) : least.length - 1
  const down = least.slice(0, place + 1).reverse()
  const above = least.slice(place + 1).reverse()
  const own = compares && reference ? claimOf(reference) : undefined
  const limits =
    own?.answers.filter((answer) => !isHighEnd(answer) && !comparisons.has(answer.condition.question)) ?? []
  const referenceBreaks = limits.some(({ answer }) => answer === 'does-not-hold')
  const referenceOpen = limits.some(({ answer }) => answer !== 'holds')
  let stopped = false
  const steps = down.map((level): LevelClaim => {
    const claim = own && level === reference ? own : claimOf(level)
    const afterStop = stopped
    if (claim.answer !== null && claim.answer !== 'holds') stopped = true
    return { ...claim, afterStop }
  })
  const judged = steps.filter(({ isReference }) => !isReference)
  const held = referenceOpen ? [] : judged.filter(({ answer, afterStop }) => answer === 'holds' && !afterStop)
  const last = held.at(-1)?.level ?? undefined
  const first = judged[0]
  const answer: Verdict =
    last !== undefined
      ? 'holds'
      : referenceBreaks
        ? 'does-not-hold'
        : first?.answer === 'holds'
          ? 'not-settled'
          : (first?.answer ?? 'not-settled')
  const stop = judged.find((step) => step.answer !== 'holds')
  return {
    ...common,
    levels: [...above.map((level) => ({ ...claimOf(level), answer: null, afterStop: true })), ...steps],
    answer,
    least: last,
    subject: last ?? (referenceBreaks ? reference : (first?.level ?? undefined)),
    referenceBreaks,
    window: windowOf(steps, last),
    more: (last === undefined ? first : stop)?.answers.find(({ more }) => more !== null)?.more ?? null,
  }
}

/** From the least that holds up to the highest from which downwards every limit of the high end is met. */
function windowOf(steps: readonly LevelClaim[], least: LevelRow | undefined): Window {
  if (least === undefined) return { unavailable: 'No level holds.' }
  const upwards = [...steps].reverse()
  const closed = upwards.findIndex((step) => step.closed)
  const to = (closed < 0 ? upwards.length : closed) - 1
  const from = upwards.findIndex(({ level }) => level?.id === least.id)
  const top = upwards[to]?.level
  if (!top || to < from)
    return { unavailable: 'The window is empty: the levels that hold go over a limit of the high end.' }
  return { from: least, to: top }
}
