import type { Finding } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import type { skeinHistoriesOf } from '#api/judging/skein-histories.ts'
import type { RuleCondition } from '#db/tables.ts'
import type { ResultSeen, TrialRecord } from '#db/trial-record.ts'
import type { FactorWithLevels, RuleRow } from '#db/trials.ts'
import { judgeAcid } from './judge-acid.ts'
import { type Judgement, judgeLadder } from './judge-ladder.ts'
import { judgeLots } from './judge-lots.ts'
import { ladderRows, ladderRule, type levelledSkeins } from './ladder-rows.ts'
import { lookOfRule } from './look-of-rule.ts'
import type { noiseOfTrial } from './noise-of-trial.ts'
import type { sideKeys } from './side-values.ts'
import type { wordsOfFactor } from './words-of-factor.ts'

/** Everything that a judgement needs of a trial. */
export type Judged = {
  readonly record: TrialRecord
  readonly histories: ReturnType<typeof skeinHistoriesOf>
  readonly factor: FactorWithLevels
  readonly words: ReturnType<typeof wordsOfFactor>
  readonly rule: RuleRow
  readonly main: RuleCondition | undefined
  readonly skeins: Finding['skeins']
  readonly levelled: ReturnType<typeof levelledSkeins>
  readonly values: ReadonlyMap<string, ResultSeen>
  readonly sides: ReturnType<typeof sideKeys>
  readonly noise: ReturnType<typeof noiseOfTrial>
}

/** Which engine answers is said by the rule’s own conditions. */
export function judged(it: Judged): Judgement | undefined {
  const { conditions } = it.rule
  const statistic = it.main?.statistic
  if (conditions.some((condition) => condition.statistic === 'worst lot')) return judgeLots(it)
  if (conditions.some((condition) => condition.against === 'next level')) return judgeAcid(it)
  if (statistic !== 'upper limit' || !it.main || it.factor.levels.length < 2) return undefined
  const { factor, histories, main, rule, sides, values, record, levelled, skeins, words, noise } = it
  const rows = ladderRows(levelled, {
    histories,
    factor,
    values,
    sides,
    results: record.results,
    read: skeins,
  })
  if (!rows.some((row) => row.value !== undefined)) return undefined
  const sessionOf = new Map(rows.map((row) => [row.skein, row.session]))
  const look = lookOfRule(rule, record.rules, {
    results: [...values.values()],
    sessionOf: (result) => sessionOf.get(result.skeinId),
  })
  const kind = outcomeKind(main.outcome)
  return judgeLadder(rows, {
    factor,
    words,
    rule: ladderRule(rule, main, { factor, block: record.trial.block, look, sides }),
    outcome: {
      label: main.outcome === 'dE00' ? 'extra loss' : `difference in ${kind.label.toLowerCase()}`,
      unit: kind.unit ?? '',
    },
    noise,
    sides,
    skeins,
  })
}
