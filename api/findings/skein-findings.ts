import type { SkeinFinding } from '#api/contract/finding.ts'
import { type Wear, wearKey } from '#api/contract/wear.ts'
import type { Condition } from '#api/judging/condition.ts'
import { resultsFor } from '#api/judging/judged-rows.ts'
import type { JudgedTrial } from '#api/judging/judged-trial.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { changeGrade } from '#api/science/fastness/change-grade.ts'
import { gradeText } from '#api/science/fastness/grades.ts'
import { groupBy } from '#api/science/group-by.ts'
import { valueInWords } from '#api/words/outcomes.ts'
import type { ColourRecord, ResultSeen, SkeinRecord } from '#db/trial-record.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import { limitKey } from './steps-of-claim.ts'

/** Every skein of a finding, lost ones too, from the highest level down, as its table shows it. */
export function skeinFindings(
  skeins: readonly { readonly skein: SkeinRecord; readonly level: LevelRow }[],
  {
    trial: { record, histories },
    trial,
    factor,
    wear,
    values,
    conditions,
  }: {
    trial: JudgedTrial
    factor: FactorWithLevels
    wear: Wear
    values: ReadonlyMap<string, ResultSeen>
    conditions: readonly Condition[]
  },
): SkeinFinding[] {
  const colours = groupBy(record.colours, (colour) => colour.skeinId)
  const grades = new Map(
    record.results
      .filter((result) => result.kind === 'change grade' && result.wearKey === wearKey(wear))
      .map((result) => [result.skeinId, result.value]),
  )
  const limits = conditions
    .filter(({ question, against }) => question === 'within-limit' && against !== 'next level')
    .map((condition) => ({ key: limitKey(condition), condition, values: limitValues(trial, condition) }))
  const sorted = [...skeins].sort((a, b) => b.level.position - a.level.position)
  return sorted.map(({ skein, level }) => {
    const mine = colours.get(skein.id) ?? []
    const before = colourAt(mine, '') ?? inherited(skein.cutFromId, colours)
    const after = colourAt(mine, wearKey(wear))
    const at = histories.stayAt(skein, factor.stage) ?? histories.stays(skein)[0]
    const entered = grades.get(skein.id)
    const side: SkeinFinding['side'] = {}
    for (const { key, condition, values: map } of limits) {
      const value = map.get(skein.id)
      if (value !== undefined) side[key] = { value, text: valueInWords(condition.outcome, value) }
    }
    const worn = Object.keys(wear).length > 0
    return {
      id: skein.id,
      code: skein.code,
      levelId: level.id,
      role: skein.role,
      status: at?.vessel.status === 'lost' ? 'lost' : skein.status,
      lostReason: skein.lostReason ?? at?.vessel.lostReason ?? null,
      sessionId: at?.vessel.sessionId ?? null,
      session: at?.session?.label ?? null,
      vesselId: at?.vessel.id ?? null,
      vessel: at?.vessel.label ?? null,
      place: at?.vessel.place ?? at?.place ?? null,
      before: before ?? null,
      after: worn ? (after ?? null) : null,
      value: values.get(skein.id)?.value ?? null,
      grade:
        worn && before && after
          ? changeGrade(before, after).grade
          : entered === undefined
            ? null
            : gradeText(entered),
      side,
      readings: mine.reduce((sum, colour) => sum + colour.readingsN, 0),
      spots: mine.reduce((sum, colour) => sum + colour.spotsN, 0),
    }
  })
}

/** The value of each skein for a limit; by lot the worst of its own and of the parts cut from it. */
function limitValues(trial: JudgedTrial, condition: Condition): ReadonlyMap<string, number> {
  const own = new Map([...resultsFor(trial, condition)].map(([id, { value }]) => [id, value]))
  if (!condition.byLot) return own
  const worse = condition.direction === 'larger is better' ? Math.min : Math.max
  for (const { id, cutFromId } of trial.record.skeins) {
    const value = own.get(id)
    if (cutFromId === null || value === undefined) continue
    const before = own.get(cutFromId)
    own.set(cutFromId, before === undefined ? value : worse(value, before))
  }
  return own
}

function colourAt(colours: readonly ColourRecord[], key: string): Lab | undefined {
  const found = colours.find((colour) => wearKey(colour.wear) === key)
  return found && { L: found.l, a: found.a, b: found.b }
}

// A part that was not read before it was cut takes its whole's colour.
function inherited(
  parentId: string | null,
  colours: ReadonlyMap<string, readonly ColourRecord[]>,
): Lab | undefined {
  return parentId === null ? undefined : colourAt(colours.get(parentId) ?? [], '')
}
