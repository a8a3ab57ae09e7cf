import { isOrdinal, leastGainOf } from '#api/contract/question.ts'
import { groupBy } from '#api/science/group-by.ts'
import { sentenceCase } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import { type ArmAsked, unanswered } from './arm-asked.ts'
import type { Engine } from './asked.ts'
import { betterByGrades } from './better-by-grades.ts'
import { betterByMeasure } from './better-by-measure.ts'
import type { ArmValue } from './block-cells.ts'
import { blankRows } from './compared-row.ts'
import { type JudgedRow, judgedRows } from './judged-rows.ts'
import { levelName } from './level-name.ts'
import { vesselWords } from './unit-words.ts'
import { blockWords } from './units-in-words.ts'

/** Is an arm better than its control? By grades and by yes or no pair by pair, else by the gain and its limits. */
export const judgeBetter: Engine = (asked) => {
  const { condition, reference, levels, factor, trial, method } = asked
  const arms = levels.filter((level) => level.id !== reference?.id)
  const least = leastGainOf(condition)
  const rows = judgedRows(asked)
  const blocked = method !== 'pooled' || isOrdinal(condition.outcome)
  const units = blocked ? blockWords(trial) : vesselWords(trial, rows)
  if (!reference)
    return arms.map((level) => ({
      ...unanswered({ asked, level, units }),
      reason: 'Choose the control that the others are held against.',
    }))
  const read: ArmValue[] = rows.flatMap(({ levelId: arm, block, unit, value }) =>
    value === undefined ? [] : [{ arm, block, unit, value }],
  )
  const byLevel = groupBy(rows, (row) => row.levelId)
  const rowsOf = (level: LevelRow) => byLevel.get(level.id) ?? []
  const missingOf = (level: LevelRow) => blankRows(rowsOf(level)).length
  const asks = arms.map(
    (level): ArmAsked => ({
      asked,
      level,
      name: levelName(level, factor),
      control: levelName(reference, factor),
      controlId: reference.id,
      least,
      units,
      missing: missingOf(level) + missingOf(reference),
      cautions: [level, reference].flatMap((it) => lossesOf(rowsOf(it), levelName(it, factor))),
    }),
  )
  return isOrdinal(condition.outcome) ? betterByGrades(read, asks) : betterByMeasure(read, asks)
}

function lossesOf(rows: readonly JudgedRow[], name: string): string[] {
  const lost = rows.flatMap((row) => (row.lost !== undefined && row.value === undefined ? [row.lost] : []))
  if (lost.length === 0) return []
  const reasons = [...new Set(lost)].join('; ')
  return [`${sentenceCase(name)}: ${lost.length} of ${rows.length} lost before it was read (${reasons}).`]
}
