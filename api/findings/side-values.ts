import { outcomeKind } from '#api/contract/outcomes.ts'
import { wearInWords, wearKey } from '#api/contract/wear.ts'
import { gradeText } from '#api/science/fastness/grades.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { RuleCondition } from '#db/tables.ts'
import type { ResultSeen, TrialRecord } from '#db/trial-record.ts'

/** What was set before any wear, and is found whatever wear a rule names. */
const withoutWear = new Set([
  'rinses to 4',
  'felting',
  'evenness',
  'dye left',
  'pH',
  'spread',
  'zone share',
  'mcdm',
])

export type SideKey = {
  readonly key: string
  readonly label: string
  readonly condition: RuleCondition
  readonly limit: string
  /** A value as it is said: a grade of 3.5 as “3-4”. */
  readonly said: (value: number) => string
}

/** The side limits of a rule, each with the name under which it travels. */
export function sideKeys(conditions: readonly RuleCondition[]): SideKey[] {
  return conditions
    .filter((condition) => condition.statistic === 'every unit')
    .map((condition) => {
      const kind = outcomeKind(condition.outcome)
      const said = (value: number) => sayValue(condition.outcome, value)
      const limit =
        condition.atLeast !== undefined
          ? `${said(condition.atLeast)} or better`
          : `${said(condition.atMost ?? 0)}${perCent(condition.outcome)} or ${kind.scale === 'count' ? 'fewer' : 'less'}`
      return { key: sideKey(condition), label: sideLabel(condition.outcome), condition, limit, said }
    })
}

/** The tests of a rule that judges by the worst lot: one outcome may be asked for after several wears. */
export function lotKeys(conditions: readonly RuleCondition[]): SideKey[] {
  return conditions
    .filter((condition) => condition.statistic === 'worst lot')
    .map((condition) => {
      const { outcome, fibre, wear, atLeast } = condition
      const said = (value: number) => sayValue(outcome, value)
      const worn = Object.keys(wear).length === 0 ? '' : ` after ${wearInWords(wear)}`
      return {
        key: `${sideKey(condition)} ${wearKey(wear)}`.trim(),
        label: `${sideLabel(outcome)}${fibre ? ` of ${fibre}` : ''}${worn}`,
        condition,
        limit: `${said(atLeast ?? 4)} or better`,
        said,
      }
    })
}

/** The sign that a limit of an outcome in per cent is said with; others are said without their unit. */
export function perCent(outcome: string): string {
  return outcomeKind(outcome).unit === '%' ? '\u00a0%' : ''
}

/** An outcome inside a sentence: “staining”; what is a name or a sign stays as it is: “L*”, “pH”. */
export function sideLabel(outcome: string): string {
  const { label } = outcomeKind(outcome)
  return /^[A-Z][a-z]/.test(label) ? label.toLowerCase() : label
}

export function sideKey({ outcome, fibre }: Pick<RuleCondition, 'outcome' | 'fibre'>): string {
  return fibre === undefined ? outcome : `${outcome} of ${fibre}`
}

export function sayValue(outcome: string, value: number): string {
  const { scale } = outcomeKind(outcome)
  if (scale === 'grade' && Number.isInteger(value * 2) && value >= 1 && value <= 5) return gradeText(value)
  return String(Number(value.toPrecision(6)))
}

/**
 * The value of a side limit for each skein: of the fibre that the rule names, else the worst over the companions; of
 * the wear that it names, but for what is set before any wear.
 */
export function sideValues(results: readonly ResultSeen[], { condition }: SideKey): Map<string, number> {
  const key = wearKey(condition.wear)
  const kind = results.filter(
    (result) =>
      result.kind === condition.outcome &&
      (condition.fibre === undefined || result.fibre === condition.fibre),
  )
  const worn = kind.filter((result) => result.wearKey === key)
  const used = worn.length === 0 && withoutWear.has(condition.outcome) ? kind : worn
  const worst = condition.atLeast !== undefined ? Math.min : Math.max
  const values = new Map<string, number>()
  for (const [skeinId, mine] of groupBy(used, (result) => result.skeinId)) {
    values.set(skeinId, worst(...mine.map((result) => result.value)))
  }
  return values
}

/** The worst grade of each skein in a test by lot, over its fibres and over the parts that were cut from it. */
export function lotValues(
  { skeins, results }: Pick<TrialRecord, 'skeins' | 'results'>,
  side: SideKey,
): Map<string, number> {
  const values = sideValues(results, side)
  for (const { id, cutFromId } of skeins) {
    const value = values.get(id)
    if (cutFromId === null || value === undefined) continue
    values.set(cutFromId, Math.min(value, values.get(cutFromId) ?? Infinity))
  }
  return values
}

const bases = ['own', 'covered', 'standard', 'twin', '', 'companion']

/** The result of each skein for an outcome at a wear; where it was had in several ways, against its own beginning. */
export function mainResults(
  results: readonly ResultSeen[],
  condition: Pick<RuleCondition, 'outcome' | 'fibre' | 'wear'>,
): Map<string, ResultSeen> {
  const key = wearKey(condition.wear)
  const kind = results.filter(
    (result) =>
      result.kind === condition.outcome &&
      (condition.fibre === undefined || result.fibre === condition.fibre),
  )
  const worn = kind.filter((result) => result.wearKey === key)
  const used = worn.length === 0 && withoutWear.has(condition.outcome) ? kind : worn
  const found = new Map<string, ResultSeen>()
  for (const result of used) {
    const before = found.get(result.skeinId)
    if (!before || bases.indexOf(result.basis) < bases.indexOf(before.basis))
      found.set(result.skeinId, result)
  }
  return found
}
