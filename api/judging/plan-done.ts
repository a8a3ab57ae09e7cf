import type { Condition } from './condition.ts'
import type { JudgedRow } from './judged-rows.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { judgedTrial } from './judged-trial.ts'

/** Questions that are tested by chance: looking again and again at them would find a “holds” by luck. */
export const testedByChance: ReadonlySet<Condition['question']> = new Set([
  'no-worse',
  'alike',
  'better',
  'open-against-covered',
])

/** The blocks of a stratum with a result, in the order in which they were worked. */
export type BlocksIn = {
  /** Those that the plan asked for. */
  readonly planned: readonly string[]
  /** Beyond it: they enter with a new edition of the rule, which is another look. */
  readonly beyond: readonly string[]
}

/**
 * Which blocks the rule judges: the first so many that it planned, by the days they were held on, else as they were
 * written down.
 */
export function blocksIn(
  trial: JudgedTrial,
  rows: readonly Pick<JudgedRow, 'block' | 'value' | 'skein'>[],
  planned: number,
): BlocksIn {
  const { sessions, skeins } = trial.record
  const place = new Map<string, number>()
  for (const it of [...sessions, ...skeins]) place.set(it.id, place.size)
  const placeOf = (block: string): number => {
    const [session] = block.startsWith('[') ? (JSON.parse(block) as string[]) : [block]
    return place.get(session ?? '') ?? Number.MAX_SAFE_INTEGER
  }
  const met = new Set(rows.flatMap((row) => (row.value === undefined ? [] : [row.block])))
  const order = [...met].sort((a, b) => placeOf(a) - placeOf(b) || (a < b ? -1 : 1))
  return { planned: order.slice(0, planned), beyond: order.slice(planned) }
}

/** The trial as the rule planned it: results of treated skeins in blocks beyond the plan are left out. */
export function withinPlan(
  trial: JudgedTrial,
  rows: readonly JudgedRow[],
  { beyond }: BlocksIn,
): JudgedTrial {
  if (beyond.length === 0) return trial
  const out = new Set(beyond)
  const skeins = new Set(rows.flatMap((row) => (out.has(row.block) ? [row.skein.id] : [])))
  const { record } = trial
  return judgedTrial({ ...record, results: record.results.filter(({ skeinId }) => !skeins.has(skeinId)) })
}
