import { outcomeKind } from '#api/contract/outcomes.ts'
import { judgedBy } from '#api/contract/question.ts'
import { alwaysTheSame } from '#api/science/verdicts/always-the-same.ts'
import { counted, listed, sentenceCase } from '#api/words/numbers.ts'
import type { JournalSeen } from '#db/trial-record.ts'
import type { LevelRow, RuleRow } from '#db/trials.ts'
import type { Condition } from './condition.ts'
import type { ControlFound } from './controls.ts'
import { changesInWords } from './journal.ts'
import type { JudgedRow } from './judged-rows.ts'
import type { JudgedTrial } from './judged-trial.ts'
import type { Noise } from './noise.ts'
import type { BlocksIn } from './plan-done.ts'

export type GateName =
  | 'rule'
  | 'plan'
  | 'controls'
  | 'noise'
  | 'alike'
  | 'units'
  | 'losses'
  | 'journal'
  | 'reference'

/** What one gate found. `stops` says which answers it does not let through. */
export type GateFound = {
  readonly gate: GateName
  readonly open: boolean
  /** One sentence, as it stands in a finding and on a sheet. */
  readonly says: string
  readonly stops: 'nothing' | 'holds' | 'every answer'
}

const passed = (gate: GateName, says: string): GateFound => ({ gate, open: true, says, stops: 'nothing' })

/** Gate 1: the rule was locked, and before the work – by the server’s clock and by the dates that were given. */
export type RuleTiming = 'before' | 'after' | 'dates-unknown' | 'not-locked'

export function ruleGate(timing: RuleTiming): GateFound {
  if (timing === 'before') return passed('rule', 'The rule was locked before the work.')
  if (timing === 'not-locked')
    return {
      gate: 'rule',
      open: false,
      says: 'No rule was locked: this is not a claim.',
      stops: 'holds',
    }
  return {
    gate: 'rule',
    open: false,
    says:
      timing === 'after'
        ? 'The rule was written after the work had begun, so this is a first look at most.'
        : 'The dates of the work are not recorded, so nobody can tell that the rule came first.',
    stops: 'nothing',
  }
}

/**
 * When the rule was locked, beside the work: by the server’s clock (when results were written down) and by the days
 * that the person gave. The same day is taken as before: a rule is locked in the morning.
 */
export function ruleTiming(
  rule: RuleRow,
  trial: JudgedTrial,
  rows: readonly Pick<JudgedRow, 'block' | 'skein' | 'value'>[],
): RuleTiming {
  if (rule.lockedAt === null) return 'not-locked'
  const locked = rule.lockedAt
  const skeins = new Set(rows.map(({ skein }) => skein.id))
  const used = trial.record.results.filter(({ skeinId }) => skeins.has(skeinId))
  if (used.some(({ firstRecordedAt }) => firstRecordedAt.getTime() < locked.getTime())) return 'after'
  const held = new Map(trial.record.sessions.map(({ id, heldOn }) => [id, heldOn]))
  const takenAt = new Map<string, Date>()
  for (const { skeinId, takenAt: at } of trial.record.readings) if (at) takenAt.set(skeinId, at)
  const lockedOn = locked.toISOString().slice(0, 10)
  let unknown = false
  for (const { skein, value } of rows) {
    if (value === undefined) continue
    const stays = trial.histories.stays(skein)
    const days = stays.flatMap(({ vessel }) => held.get(vessel.sessionId) ?? [])
    const read = takenAt.get(skein.id)?.toISOString().slice(0, 10)
    const known = read === undefined ? days : [...days, read]
    if (known.length === 0) unknown = true
    if (known.some((day) => day < lockedOn)) return 'after'
  }
  return unknown ? 'dates-unknown' : 'before'
}

/** Gate 2: what was planned is in. */
export function planGate(
  { planned, beyond }: BlocksIn,
  wanted: number,
  units: { readonly one: string; readonly many: string },
): GateFound {
  if (planned.length < wanted) {
    const word = wanted === 1 ? units.one : units.many
    const are = planned.length === 1 ? 'is' : 'are'
    return {
      gate: 'plan',
      open: false,
      says: `${planned.length} of ${wanted} planned ${word} ${are} in; the answer comes with the rest of the plan.`,
      stops: 'holds',
    }
  }
  return passed(
    'plan',
    beyond.length > 0
      ? `All ${counted(wanted, units)} are in. ${sentenceCase(counted(beyond.length, units))} beyond the plan ${beyond.length === 1 ? 'is' : 'are'} not judged: ${beyond.length === 1 ? 'it enters' : 'they enter'} with a new edition of the rule.`
      : `All ${counted(wanted, units)} of the plan are in.`,
  )
}

/** Gate 3: controls did what controls must do. */
export function controlsGate(found: readonly ControlFound[]): GateFound {
  const failed = found.filter(({ ok }) => ok === false)
  if (failed.length > 0)
    return {
      gate: 'controls',
      open: false,
      says: `The test did not work: ${listed(failed.map(({ found: says }) => says))}.`,
      stops: 'every answer',
    }
  const recorded = found.filter(({ ok }) => ok === true)
  return passed(
    'controls',
    recorded.length === 0
      ? 'No control was recorded.'
      : `${sentenceCase(counted(recorded.length, { one: 'control', many: 'controls' }))} did as they must.`,
  )
}

/** Gate 4: the measuring error is known, and before and after were read the same way. */
export function noiseGate(
  conditions: readonly Condition[],
  noise: Noise | undefined,
  measured: { readonly alike: boolean; readonly typed: number; readonly found: readonly string[] },
): GateFound[] {
  const byMeter = conditions.some(
    ({ outcome, question }) =>
      judgedBy(outcome) === 'meter' &&
      outcomeKind(outcome).unit === 'ΔE00' &&
      (question === 'no-worse' ||
        question === 'alike' ||
        question === 'open-against-covered' ||
        question === 'better') &&
      outcome !== 'spread',
  )
  if (!byMeter) return [passed('noise', 'Nothing here is judged by a measured colour change.')]
  const gates: GateFound[] = []
  if (noise === undefined || noise.kind === 'planning')
    gates.push({
      gate: 'noise',
      open: false,
      says:
        measured.typed > 0
          ? 'Colour changes were typed in without their L*a*b*, and the measuring error is not known: measure an unwashed twin again.'
          : 'The measuring error is not known: measure an unwashed twin again, then it can be settled.',
      stops: 'holds',
    })
  else gates.push(passed('noise', `Measuring error from ${noise.from}.`))
  if (!measured.alike)
    gates.push({
      gate: 'alike',
      open: false,
      says: `Before and after were not measured the same way. ${measured.found.join(' ')}`.trim(),
      stops: 'holds',
    })
  return gates
}

/** Gate 5: levels were given independently. A place that the tool itself drew is never blamed. */
export function unitsGate(
  rows: readonly JudgedRow[],
  levels: readonly LevelRow[],
  {
    trial,
    compares,
    name,
    vessel,
  }: {
    trial: JudgedTrial
    /** Levels are held against each other. */
    compares: boolean
    name: (level: LevelRow) => string
    vessel: { readonly one: string; readonly many: string }
  },
): GateFound[] {
  const read = rows.filter((row) => row.value !== undefined)
  const met = levels.filter((level) => read.some(({ levelId }) => levelId === level.id))
  if (!compares || met.length < 2) return [passed('units', 'Each is judged by itself.')]
  const blocks = new Map<string, Set<string>>()
  for (const { block, levelId } of read) blocks.set(block, (blocks.get(block) ?? new Set()).add(levelId))
  const gates: GateFound[] = []
  if ([...blocks.values()].every((inside) => inside.size === 1))
    gates.push({
      gate: 'units',
      open: false,
      says: 'Every session held one level only, so a level cannot be told from its session.',
      stops: 'every answer',
    })
  const single = met.filter(
    (level) => new Set(read.filter(({ levelId }) => levelId === level.id).map(({ unit }) => unit)).size === 1,
  )
  if (single.length > 0)
    gates.push({
      gate: 'units',
      open: false,
      says: `${sentenceCase(listed(single.map(name)))} had one ${vessel.one} in the whole trial: one ${vessel.one} is one, however many skeins lay in it.`,
      stops: 'every answer',
    })
  const tied = alwaysTheSame(
    read.flatMap((row) => {
      const stay = trial.histories.stays(row.skein).find(({ vessel: { id } }) => id === row.vessel)
      return [
        {
          level: row.levelId,
          session: stay?.vessel.sessionId ?? row.block,
          vessel: row.vessel,
          skein: row.skein.id,
          value: row.value,
          equipment: stay?.vessel.equipment ?? undefined,
          ...(trial.record.trial.seed === null
            ? {
                place: stay?.vessel.place ?? stay?.place ?? undefined,
                drawnOrder: stay?.vessel.drawnOrder ?? undefined,
              }
            : {}),
          date: stay?.session?.heldOn ?? undefined,
        },
      ]
    }),
  )
  for (const { words, levels: ids } of tied) {
    const names = levels.filter(({ id }) => ids.includes(id)).map(name)
    gates.push(
      passed(
        'units',
        `${sentenceCase(listed(names))} always had the same ${words}, and others had another: what comes from that cannot be told from the level.`,
      ),
    )
  }
  return gates.length > 0 ? gates : [passed('units', 'Levels were given independently.')]
}

/** Gate 6: losses are said, and those that go with a level stop a “holds”. */
export function lossesGate(
  rows: readonly JudgedRow[],
  levels: readonly LevelRow[],
  name: (level: LevelRow) => string,
): GateFound {
  const at = levels.map((level) => {
    const mine = rows.filter(({ levelId }) => levelId === level.id)
    return {
      level,
      meant: mine.length,
      lost: mine.filter(({ lost, value }) => lost !== undefined && value === undefined),
    }
  })
  const lossy = at.filter(({ lost }) => lost.length > 0)
  const all = lossy.flatMap(({ level, lost }) =>
    lost.map(({ skein, lost: why }) => `${skein.code} (${name(level)}): ${why}`),
  )
  if (all.length === 0) return passed('losses', 'Nothing was lost.')
  const says = `${counted(all.length, { one: 'skein', many: 'skeins' })} lost: ${all.slice(0, 8).join('; ')}${all.length > 8 ? `; and ${all.length - 8} more` : ''}.`
  const [only] = lossy
  const goesWithLevel =
    lossy.length === 1 &&
    only !== undefined &&
    at.filter(({ meant }) => meant > 0).length > 1 &&
    (only.lost.length >= 2 || only.lost.length * 2 >= only.meant)
  if (!goesWithLevel || only === undefined) return passed('losses', sentenceCase(says))
  return {
    gate: 'losses',
    open: false,
    says: `${sentenceCase(says)} ${sentenceCase(name(only.level))} lost ${only.lost.length} of ${only.meant} and no other level lost any: what is left may be the better part of it.`,
    stops: 'holds',
  }
}

/** Gate 7: what was changed after the first reading is said, and what the answer is without it. */
export function journalGate(
  changes: readonly JournalSeen[],
  without: { readonly headline: string; readonly worse: boolean } | undefined,
): GateFound {
  if (changes.length === 0) return passed('journal', 'Nothing was changed after the first reading.')
  const said = changesInWords(changes)
  return {
    gate: 'journal',
    open: without === undefined,
    says:
      without === undefined
        ? `${said} The answer is the same without ${changes.length === 1 ? 'it' : 'them'}.`
        : `${said} Without ${changes.length === 1 ? 'it' : 'them'}: “${without.headline}”`,
    stops: 'nothing',
  }
}
