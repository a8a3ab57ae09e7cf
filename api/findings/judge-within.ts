import type { ResultSeen, TrialRecord } from '#db/trial-record.ts'
import { type Judged, judged } from './judged.ts'
import { levelledSkeins } from './ladder-rows.ts'
import { headlineOf, type LevelOfOther } from './level-of-other.ts'
import { skeinFindings } from './skein-findings.ts'

/** What is the same for every level of the other factor. */
export type JudgedAlike = {
  readonly record: TrialRecord
  readonly histories: Judged['histories']
  readonly factor: Judged['factor'] | undefined
  readonly words: Judged['words'] | undefined
  readonly rule: Judged['rule'] | undefined
  readonly main: Judged['main']
  readonly values: ReadonlyMap<string, ResultSeen>
  readonly sides: Judged['sides']
  readonly noise: Judged['noise']
  readonly shown: Parameters<typeof skeinFindings>[1]['sides']
}

/** The skeins of one level of the other factor, and their answer, whose headline names that level; of all, where none splits the trial. */
export function judgeWithin(alike: JudgedAlike, within: LevelOfOther | undefined) {
  const { record, histories, factor, words, rule, main, values, sides, shown } = alike
  const levelled = factor ? levelledSkeins(record, histories, factor, within) : []
  const wear = main?.wear ?? {}
  const skeins = factor
    ? skeinFindings(levelled, { record, histories, factor, wear, values, sides: shown })
    : []
  const ids = new Set(levelled.map(({ skein }) => skein.id))
  const used = record.results.filter((result) => ids.has(result.skeinId))
  const found =
    rule && factor && words && values.size + sides.length > 0 && used.length > 0
      ? judged({ ...alike, rule, factor, words, levelled, skeins })
      : undefined
  const judgement = found && {
    ...found,
    verdict: { ...found.verdict, headline: headlineOf(found.verdict.headline, within) },
  }
  return { levelled, skeins, used, judgement }
}
