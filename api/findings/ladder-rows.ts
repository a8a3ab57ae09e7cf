import type { SkeinFinding } from '#api/contract/finding.ts'
import type { SkeinHistories } from '#api/judging/skein-histories.ts'
import type { TrialRow, TrialRule } from '#api/science/verdicts/trial-verdict.ts'
import type { RuleCondition } from '#db/tables.ts'
import type { ResultSeen, SkeinRecord, TrialRecord } from '#db/trial-record.ts'
import type { FactorWithLevels, LevelRow, RuleRow } from '#db/trials.ts'
import type { LevelOfOther } from './level-of-other.ts'
import { type SideKey, sideValues } from './side-values.ts'

/** Roles whose skeins are given a level; twins, blanks and controls never are. */
const given = new Set(['treated', 'bled'])

/** A skein of the finding, with the level that it was given. */
export type LevelledSkein = { readonly skein: SkeinRecord; readonly level: LevelRow }

/**
 * The skeins that a finding is about: given a level of the factor, and, where another factor splits the trial, the
 * level that the finding is within. A whole that only its parts were tested of is not among them.
 */
export function levelledSkeins(
  record: TrialRecord,
  histories: SkeinHistories,
  factor: FactorWithLevels,
  within: LevelOfOther | undefined,
): LevelledSkein[] {
  const levels = new Map(factor.levels.map((level) => [level.id, level]))
  const found: LevelledSkein[] = []
  for (const skein of record.skeins) {
    if (!given.has(skein.role)) continue
    const level = levels.get(histories.levelOf(skein, factor) ?? '')
    if (!level) continue
    if (within && histories.levelOf(skein, within.factor) !== within.level.id) continue
    found.push({ skein, level })
  }
  // Of a whole and its parts, the measured stands for both: a part cut for one test is no skein of the ladder of its own.
  const measured = new Set(record.results.map((result) => result.skeinId))
  const ids = new Set(found.map(({ skein }) => skein.id))
  const cut = new Set(
    found.flatMap(({ skein }) =>
      skein.cutFromId !== null && ids.has(skein.cutFromId) ? [skein.cutFromId] : [],
    ),
  )
  return found.filter(({ skein }) => {
    if (skein.cutFromId !== null && ids.has(skein.cutFromId)) return !measured.has(skein.cutFromId)
    return measured.has(skein.id) || !cut.has(skein.id)
  })
}

/** The rows that the verdict judges. */
export function ladderRows(
  skeins: readonly LevelledSkein[],
  {
    histories,
    factor,
    values,
    sides,
    results,
    read,
  }: {
    histories: SkeinHistories
    factor: FactorWithLevels
    values: ReadonlyMap<string, ResultSeen>
    sides: readonly SideKey[]
    results: readonly ResultSeen[]
    /** The same skeins as the table shows them, with all their readings. */
    read: readonly SkeinFinding[]
  },
): TrialRow[] {
  const counted = new Map(read.map((it) => [it.id, it]))
  const sideMaps = sides.map((side) => [side.key, sideValues(results, side)] as const)
  return skeins.map(({ skein, level }) => {
    const stays = histories.stays(skein)
    const at = histories.stayAt(skein, factor.stage) ?? stays[0]
    const later = stays
      .filter((stay) => stay !== at && stay.vessel.id !== at?.vessel.id)
      .map((stay) => stay.vessel.id)
    const result = values.get(skein.id)
    const read = counted.get(skein.id)
    const lost =
      skein.status === 'lost'
        ? (skein.lostReason ?? 'lost')
        : at?.vessel.status === 'lost'
          ? (at.vessel.lostReason ?? 'lost')
          : undefined
    return {
      level: levelName(factor, level),
      session: at?.vessel.sessionId ?? '',
      vessel: at?.vessel.id ?? skein.id,
      parent: skein.cutFromId ?? undefined,
      skein: skein.id,
      later,
      equipment: at?.vessel.equipment ?? undefined,
      place: at?.vessel.place ?? at?.place ?? undefined,
      drawnOrder: at?.vessel.drawnOrder ?? undefined,
      date: at?.session?.heldOn ?? undefined,
      value: lost === undefined ? result?.value : undefined,
      lost,
      side: Object.fromEntries(sideMaps.map(([key, map]) => [key, map.get(skein.id)])),
      readings: read?.readings,
      spots: read && read.readings > 0 ? read.spots / read.readings : undefined,
    }
  })
}

/** How a level is called in the verdict: a number by its value, a category by its label. */
export function levelName(factor: FactorWithLevels, level: LevelRow): string | number {
  return factor.kind === 'number' && level.value !== null ? level.value : level.label
}

/** The rule as the verdict takes it. */
export function ladderRule(
  rule: RuleRow,
  main: RuleCondition,
  {
    factor,
    block,
    look,
    sides,
  }: {
    factor: FactorWithLevels
    block: 'session' | 'vessel' | 'parent'
    look: number
    sides: readonly SideKey[]
  },
): TrialRule {
  const reference = factor.levels.find((level) => level.isReference) ?? factor.levels.at(-1)
  return {
    margin: main.margin ?? 1,
    confidence: rule.confidence,
    direction: main.direction === 'larger is better' ? 'larger-is-better' : 'smaller-is-better',
    method: rule.method,
    plannedSessions: rule.plannedSessions,
    look,
    block,
    order: leastFirst(factor, reference).map((level) => levelName(factor, level)),
    ...(reference ? { reference: levelName(factor, reference) } : {}),
    limits: sides.map(({ key, condition }) => ({
      side: key,
      end: condition.end,
      ...(condition.atLeast === undefined ? {} : { atLeast: condition.atLeast }),
      ...(condition.atMost === undefined ? {} : { atMost: condition.atMost }),
    })),
  }
}

/** Words have no least: wherever the reference stands among them, every other one is held against it. */
function leastFirst(
  { ordered, levels }: FactorWithLevels,
  reference: LevelRow | undefined,
): readonly LevelRow[] {
  if (ordered || !reference) return levels
  return [...levels.filter((level) => level !== reference), reference]
}
