import type { SkeinFinding } from '#api/contract/finding.ts'
import { type Wear, wearKey } from '#api/contract/wear.ts'
import type { SkeinHistories } from '#api/judging/skein-histories.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { changeGrade } from '#api/science/fastness/change-grade.ts'
import { gradeText } from '#api/science/fastness/grades.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { ColourRecord, ResultSeen, TrialRecord } from '#db/trial-record.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import type { LevelledSkein } from './ladder-rows.ts'
import { lotValues, type SideKey, sideValues } from './side-values.ts'

/** Every skein of a finding, lost ones too, from the highest level down, as its table shows it. */
export function skeinFindings(
  skeins: readonly LevelledSkein[],
  {
    record,
    histories,
    factor,
    wear,
    values,
    sides,
  }: {
    record: TrialRecord
    histories: SkeinHistories
    factor: FactorWithLevels
    wear: Wear
    values: ReadonlyMap<string, ResultSeen>
    sides: readonly SideKey[]
  },
): SkeinFinding[] {
  const colours = groupBy(record.colours, (colour) => colour.skeinId)
  const grades = new Map(
    record.results
      .filter((result) => result.kind === 'change grade' && result.wearKey === wearKey(wear))
      .map((result) => [result.skeinId, result.value]),
  )
  const sideMaps = sides.map((side) => ({
    side,
    values:
      side.condition.statistic === 'worst lot' ? lotValues(record, side) : sideValues(record.results, side),
  }))
  const sorted = [...skeins].sort((a, b) => b.level.position - a.level.position)
  return sorted.map(({ skein, level }) => {
    const mine = colours.get(skein.id) ?? []
    const before = colourAt(mine, '') ?? inherited(skein.cutFromId, colours)
    const after = colourAt(mine, wearKey(wear))
    const at = histories.stayAt(skein, factor.stage) ?? histories.stays(skein)[0]
    const entered = grades.get(skein.id)
    const side: SkeinFinding['side'] = {}
    for (const { side: key, values: map } of sideMaps) {
      const value = map.get(skein.id)
      if (value !== undefined) side[key.key] = { value, text: key.said(value) }
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
