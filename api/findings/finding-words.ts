import type { Caution, Finding } from '#api/contract/finding.ts'
import { wearInWords, wearKey } from '#api/contract/wear.ts'
import type { Condition } from '#api/judging/condition.ts'
import { outcomeInSentence } from '#api/words/outcomes.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import type { FactorWithLevels, RuleRow } from '#db/trials.ts'

type Common = {
  readonly record: TrialRecord
  readonly factor: FactorWithLevels | undefined
  readonly rule: RuleRow | undefined
  readonly main: Condition | undefined
  readonly skeins: Finding['skeins']
}
/** What is missing before there can be a verdict, in one sentence. */
export function waitsFor({ factor, rule, record, main, skeins }: Common, used: number): string {
  if (record.factors.length === 0 || !factor)
    return 'No readings yet. Paste a table, or read the first skein.'
  if (used === 0) return 'No readings yet. Paste a table, or read the first skein.'
  const read = skeins.filter((skein) => skein.value !== null).length
  const instead = read === 0 && main ? readAfter(record, main) : []
  if (main && instead.length > 0)
    return `The rule asks for readings after ${wearInWords(main.wear)}; these were read after ${instead.join(', after ')}. Read them as the rule says, or write a new edition of it.`
  if (read === 0)
    return `${read} of ${skeins.length} skeins are read. Findings begin with the first after-reading.`
  if (!rule) return 'No rule yet. Write one on the plan: without it there are pictures, and no verdict.'
  return `The rule has no condition that can be judged for ${main ? outcomeInSentence(main.outcome) : 'this trial'}.`
}

/** After what the outcome of the rule was read, where it was read after something else than the rule says. */
function readAfter({ results }: TrialRecord, { outcome, wear }: Condition): string[] {
  const worn = results.filter(
    (it) => it.kind === outcome && it.wearKey !== '' && it.wearKey !== wearKey(wear),
  )
  return [...new Set(worn.map((it) => wearInWords(it.wear)))].slice(0, 3)
}

/** What a table left unsaid. */
export function assumedCaution({ record, skeins }: Pick<Common, 'record' | 'skeins'>): Caution[] {
  const used = new Set(skeins.map((skein) => skein.vesselId))
  const assumed = record.vessels.filter((vessel) => vessel.assumed && used.has(vessel.id)).length
  if (assumed === 0) return []
  return [
    {
      kind: 'doubt',
      title: 'Did every skein have its own pot?',
      text: `Each of ${assumed} skeins is taken to have had a pot of its own. Skeins that shared one count as one.`,
    },
  ]
}

/** How the outcome was read, in one sentence. */
export function howRead(main: Condition | undefined): string {
  if (main?.outcome !== 'dE00') return ''
  return 'Spots were averaged to L*, a*, b* for each reading; ΔE00 was taken between a skein’s own two readings.'
}
