import type { Finding } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { countsLots } from '#api/contract/question.ts'
import { gradeText } from '#api/science/fastness/grades.ts'
import { figure } from '#web/form/number-words.ts'
import { alikeAtFirst, sidesOf } from '#web/pages/trial/findings/finding-words.ts'

/** Which columns the table of every skein has: only what was recorded of at least one. */
export type SkeinColumns = {
  readonly coloured: boolean
  /** What is varied, in lower case. */
  readonly axis: string
  readonly ticks: ReadonlyMap<string, string>
  /** The head of the outcome’s own column; null where the tests by lot say it already. */
  readonly value: string | null
  readonly decimals: number
  readonly said: (value: number, decimals: number) => string
  readonly grade: boolean
  readonly sides: readonly { readonly key: string; readonly label: string }[]
  /** What the heads of those begin with alike, said once above: “staining after”. */
  readonly sidesSay: string
  /** How many columns come after that of the level. */
  readonly afterLevel: number
}

/**
 * The columns of the table of every skein.
 *
 * @example
 * skeinColumns({ skeins: [], steps: [], levels: [], factor: { label: 'Steam time' }, outcome: { key: 'dE00', label: 'Loss' }, rule: null }) // { coloured: false, axis: 'steam time', value: 'ΔE00', afterLevel: 1 }
 */
export function skeinColumns({
  skeins,
  steps,
  levels,
  factor,
  outcome,
  rule,
}: Pick<Finding, 'skeins' | 'steps' | 'levels' | 'factor' | 'outcome' | 'rule'>): SkeinColumns {
  const coloured = skeins.some(({ before, after }) => before !== null && after !== null)
  const grade = skeins.some((skein) => skein.grade !== null)
  const recorded = new Set(skeins.flatMap(({ side }) => Object.keys(side)))
  const sides = sidesOf(steps).filter(({ key }) => recorded.has(key))
  const byLot = rule?.conditions.some(countsLots) ?? false
  const { alike, rest } = alikeAtFirst(sides.map(({ label }) => label))
  const scale = outcome ? outcomeKind(outcome.key).scale : 'number'
  return {
    coloured,
    axis: factor?.label.toLowerCase() ?? '',
    ticks: new Map(levels.map(({ id, tick }) => [id, tick])),
    value: byLot ? null : outcome?.key === 'dE00' ? 'ΔE00' : headOf(outcome),
    decimals: outcome?.key === 'dE00' ? 2 : 1,
    said: (value, decimals) =>
      scale === 'grade' && Number.isInteger(2 * value) ? gradeText(value) : figure(value, decimals),
    grade,
    sides: sides.map(({ key, label }, place) => ({ key, label: rest[place] ?? label })),
    sidesSay: alike,
    afterLevel: (coloured ? 7 : 0) + (byLot ? 0 : 1) + (grade ? 1 : 0) + sides.length,
  }
}

function headOf(outcome: Finding['outcome']): string {
  if (outcome === null) return 'result'
  const label = outcome.label.startsWith('L*') ? outcome.label : outcome.label.toLowerCase()
  return outcome.unit === null ? label : `${label}, ${outcome.unit}`
}
