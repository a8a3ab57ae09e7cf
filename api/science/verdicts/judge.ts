import { joining, unitOfFactor } from '../design/unit-of-factor.ts'
import { countsOfLevels, hasResult } from './counts-of-levels.ts'
import { judgeCautions } from './judge-cautions.ts'
import { judgeSentences, methodInWords } from './judge-sentences.ts'
import { noiseShares } from './judged.ts'
import { ladderOfLevels } from './ladder-of-levels.ts'
import { type LadderDesign, leastLevelThatHolds } from './least-level-that-holds.ts'
import type { LadderMethod, LadderVerdict, Level, LevelRow } from './level-rows.ts'
import { otherMethod } from './other-method.ts'
import type { TrialNoise, TrialRow, TrialRule, TrialVerdict, TrialWords } from './trial-verdict.ts'
import { whatWouldSettle } from './what-would-settle.ts'

/**
 * The verdict of a whole trial under its locked rule: the least level that holds, or why it is not settled, with
 * counts, cautions and sentences.
 *
 * Beside the steps of `leastLevelThatHolds` it sees to the design: the planned sessions must be in; a level with one
 * unit in the whole trial, or with sessions of its own, supports no claim; skeins that shared a wash jar count once;
 * a noise floor over half the margin lets nothing hold; a second look is judged at 97.5 %.
 *
 * @param rows      Every skein that was meant for the finding, lost ones too: one base, one fibre, one wear.
 * @param sessionsIn  Sessions whose results are in; counted from the rows unless given.
 * @throws RangeError as `leastLevelThatHolds`, and for planned sessions or a look below 1.
 *
 * @example
 * const skein = (level, session, value) => ({ level, session, vessel: `${session} ${level}`, skein: `${session} ${level}`, value })
 * const rows = ['Mon', 'Tue', 'Wed'].flatMap((day, i) => [skein(35, day, 1 + i / 10), skein(75, day, 1.1 - i / 10)])
 * judge(rows, { margin: 1, plannedSessions: 4 }, { words: { level: (minutes) => `${minutes} minutes of steam` } }).sentences.headline // 'Not settled: 3 of 4 sessions.'
 */
export function judge(
  rows: readonly TrialRow[],
  rule: TrialRule,
  options: {
    readonly words: TrialWords
    readonly noise?: TrialNoise | undefined
    readonly sessionsIn?: number | undefined
  },
): TrialVerdict {
  const { plannedSessions, look = 1, margin } = rule
  if (!(plannedSessions >= 1) || !(look >= 1))
    throw new RangeError('Planned sessions and looks are counted from 1.')
  const { words, noise } = options
  const withResult = rows.filter(hasResult)
  const unit = unitOfFactor(withResult)
  const ladder = ladderOfLevels(rows, rule)
  const counts = countsOfLevels(ladder, rows, unit)
  const blockOf = blockOfRow(rule.block)
  const sessionsIn = options.sessionsIn ?? new Set(withResult.map(blockOf)).size
  const planDone = sessionsIn >= plannedSessions
  const sessionIsLevel = unit.kind === 'session' && ladder.length > 1 && rule.method !== 'pooled'
  const oneUnit = counts.filter((it) => it.units === 1).map((it) => String(it.level))
  const groups = groupsOfBlocks(withResult, unit.unitOf, blockOf)
  const unitOf = new Map(withResult.map((row, place) => [row, unit.unitOf[place] ?? row.skein]))

  const confidence = confidenceOfLook(rule.confidence ?? 0.95, look)
  // The model does not know of shared jars; where they join sessions, only the paired comparison counts them rightly.
  const method = groups.any && rule.method === 'model' ? 'paired' : (rule.method ?? 'paired')
  const levelRows = rows
    .filter((row) => row.lost === undefined)
    .map((row): LevelRow => {
      const unitName = unitOf.get(row) ?? row.skein
      const { level, value, side } = row
      if (method === 'pooled') return { level, value, side, vessel: unitName }
      const joined = unit.joined.includes(String(level))
      return { level, value, side, block: blockOf(row), vessel: joined ? unitName : row.vessel }
    })
  const cannotSeeMargin = noise !== undefined && noise.floor > margin * noiseShares.blind
  const design: LadderDesign = {
    groupOf: groups.any ? (level) => groups.groupOf(level, referenceOf(ladder, rule)) : undefined,
    noClaim: (level) => !planDone || sessionIsLevel || oneUnit.includes(String(level)),
    cannotSeeMargin,
  }
  const by = (it: LadderMethod): LadderVerdict =>
    leastLevelThatHolds(
      levelRows,
      {
        margin,
        confidence,
        order: ladder,
        reference: rule.reference,
        direction: rule.direction,
        method: it,
        noiseRms: noise?.rms,
        sdPlanned: rule.sdPlanned,
        limits: rule.limits,
      },
      design,
    )
  const result = by(method)
  // Joined sessions are beyond the model, so there is nothing fair to set beside.
  const alternative = groups.any ? undefined : otherMethod(result, by, words)

  const subject = subjectOf(result)
  const known = {
    rows,
    rule,
    noise,
    words,
    result,
    counts,
    unit,
    subject,
    sessionsIn,
    look,
    sessionIsLevel,
    oneUnit,
    cannotSeeMargin,
    joinedBlocks: groups.any,
  }
  const settle = result.verdict === 'not-settled' ? whatWouldSettle(known) : undefined
  return {
    verdict: result.verdict,
    least: result.least,
    subject,
    reference: result.reference,
    referenceMean: result.referenceMean,
    referenceLimits: result.referenceLimits,
    window: result.window,
    steps: result.steps,
    unit: unit.kind,
    counts,
    sessionsIn,
    plannedSessions,
    look,
    confidence,
    cautions: judgeCautions(known, alternative),
    sentences: judgeSentences(known, settle),
    settle,
    method: [methodInWords(known), ...(alternative === undefined ? [] : [alternative.sentence])].join(' '),
    methodUsed: method,
    alternative,
  }
}

/**
 * The confidence of a look: each later one has half the doubt of the one before, so that all looks together
 * never have more than twice the doubt of one.
 *
 * @example
 * [confidenceOfLook(0.95, 1), confidenceOfLook(0.95, 2)] // [0.95, 0.975]
 */
export function confidenceOfLook(confidence: number, look: number): number {
  return 1 - (1 - confidence) / 2 ** (look - 1)
}

function blockOfRow(block: TrialRule['block'] = 'session'): (row: TrialRow) => string {
  if (block === 'vessel') return (row) => JSON.stringify([row.session, row.vessel])
  return block === 'parent' ? (row) => row.parent ?? row.skein : (row) => row.session
}

function referenceOf(ladder: readonly Level[], rule: TrialRule): Level {
  return rule.reference ?? ladder.at(-1) ?? ''
}

/** Blocks that a unit of a level, or of the reference, reaches across: they count as one block for that level. */
function groupsOfBlocks(
  rows: readonly TrialRow[],
  unitOf: readonly string[],
  blockOf: (row: TrialRow) => string,
): {
  readonly any: boolean
  readonly groupOf: (level: Level, reference: Level) => (block: string) => string
} {
  const reach = new Map<string, { level: string; blocks: Set<string> }>()
  rows.forEach((row, place) => {
    const name = unitOf[place] ?? ''
    const unit = reach.get(name) ?? { level: String(row.level), blocks: new Set() }
    unit.blocks.add(blockOf(row))
    reach.set(name, unit)
  })
  const wide = [...reach.values()].filter((it) => it.blocks.size > 1)
  return {
    any: wide.length > 0,
    groupOf: (level, reference) => {
      const { find, unite } = joining()
      for (const it of wide) {
        if (it.level !== String(level) && it.level !== String(reference)) continue
        const [first = '', ...others] = it.blocks
        for (const block of others) unite(first, block)
      }
      return find
    },
  }
}

/** The level that a headline speaks of: the least that holds, else the first that was not shown to. */
function subjectOf(result: LadderVerdict): Level | undefined {
  if (result.least !== undefined) return result.least
  const referenceBreaks = result.referenceLimits.some((it) => it.end === 'low' && it.broken)
  if (result.verdict === 'does-not-hold' && referenceBreaks) return result.reference
  return result.steps[0]?.level
}
