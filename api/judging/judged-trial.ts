import { groupBy } from '#api/science/group-by.ts'
import type { ResultSeen, TrialRecord } from '#db/trial-record.ts'
import { type SkeinHistories, skeinHistoriesOf } from './skein-histories.ts'

/** A trial’s record with what every question asks of it worked out once. */
export type JudgedTrial = {
  readonly record: TrialRecord
  readonly histories: SkeinHistories
  readonly resultsOf: (skeinId: string) => readonly ResultSeen[]
}

export function judgedTrial(record: TrialRecord): JudgedTrial {
  const results = groupBy(record.results, (result) => result.skeinId)
  return {
    record,
    histories: skeinHistoriesOf(record),
    resultsOf: (skeinId) => results.get(skeinId) ?? [],
  }
}
