import { outcomeKind } from '#api/contract/outcomes.ts'
import { bases } from '#api/contract/reading.ts'
import { wearKey } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { OutcomeKept, RinseKept } from '#db/histories.ts'
import { firstRecorded, type SkeinResult } from './result-row.ts'

/**
 * What was graded or measured of one skein, one row for each kind, fibre and wear: several graders are their median,
 * for grades and steps the worse of the two in the middle. The name of a zone, and the basis of a difference that came
 * without its readings, stand as `basis`.
 */
export function resultsOfOutcomes(outcomes: readonly OutcomeKept[]): SkeinResult[] {
  const results: SkeinResult[] = []
  for (const group of groupBy(outcomes, keyOf).values()) {
    const [first] = group
    if (!first) continue
    const texts = new Set(group.map((it) => it.text))
    results.push({
      kind: first.kind,
      fibre: first.fibre ?? '',
      basis: basisOf(first),
      wear: first.wear,
      value: middle(
        group.map((it) => it.value),
        first.kind,
      ),
      text: texts.size === 1 ? first.text : null,
      dL: null,
      dA: null,
      dB: null,
      readingsN: group.length,
      spotsN: 0,
      settings: '',
      firstRecordedAt: firstRecorded(group),
    })
  }
  return results
}

/** The number of the first rinse that came out at clarity 4, where the rinses themselves were written down. */
export function rinsesTo4(rinses: readonly RinseKept[]): SkeinResult | undefined {
  const upTo = rinses.findIndex((rinse) => rinse.clarity !== null && rinse.clarity >= 4)
  const rinse = rinses[upTo]
  if (!rinse) return undefined
  const used = rinses.slice(0, upTo + 1).map(({ createdAt }) => ({ createdAt, takenAt: null }))
  return {
    kind: 'rinses to 4',
    fibre: '',
    basis: '',
    wear: {},
    value: rinse.number,
    text: null,
    dL: null,
    dA: null,
    dB: null,
    readingsN: used.length,
    spotsN: 0,
    settings: '',
    firstRecordedAt: firstRecorded(used),
  }
}

/** The key under which one skein has one result. */
export function keyOf(it: OutcomeKept): string {
  return JSON.stringify([it.kind, it.fibre ?? '', basisOf(it), wearKey(it.wear)])
}

function basisOf({ kind, text }: OutcomeKept): string {
  if (text === null) return ''
  if (kind === 'zone share') return text
  return kind === 'dE00' && (bases as readonly string[]).includes(text) ? text : ''
}

function middle(values: readonly number[], kind: string): number {
  const sorted = [...values].sort((a, b) => a - b)
  const low = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
  const high = sorted[Math.ceil((sorted.length - 1) / 2)] ?? 0
  const { scale, better } = outcomeKind(kind)
  // Between two steps there is no step: the worse stands.
  if (scale === 'number') return (low + high) / 2
  return better === 'larger' ? low : high
}
