import type { Factor } from '#api/contract/trial.ts'
import { staggeredEntry } from '#api/science/design/staggered-entry.ts'

type Ladder = Pick<Factor, 'unit' | 'levels'>

/**
 * The clock of one session of a ladder of times, a line for each act: longest in first, all out together.
 *
 * @example
 * clockOf({ unit: 'min', levels: [{ value: 0 }, { value: 50 }, { value: 75 }] }, { vessel: 'packet' }) // ['0 min: 75 min packets in', '+25 min: 50 min packets in', '75 min: all out together', '0 min packets stay out']
 */
export function clockOf(
  {
    unit,
    levels,
  }: { readonly unit: string | null; readonly levels: readonly { readonly value: number | null }[] },
  { vessel }: { readonly vessel: string },
): string[] {
  const of = unit ?? 'min'
  const times = timesOf(levels)
  const { entries, allOutAt } = staggeredEntry(times)
  if (entries.length === 0) return []
  return [
    ...entries.map(
      ({ stays, inAt }) => `${inAt === 0 ? '' : '+'}${rounded(inAt)} ${of}: ${stays} ${of} ${vessel}s in`,
    ),
    `${allOutAt} ${of}: all out together`,
    ...(times.includes(0) ? [`0 ${of} ${vessel}s stay out`] : []),
  ]
}

/** When a vessel of these levels goes in: “+25 min”, or “stays out”. */
export function entryOf(ladder: Ladder, given: readonly { readonly levelId: string }[]): string {
  const level = ladder.levels.find(({ id }) => given.some(({ levelId }) => levelId === id))
  const stays = level?.value
  if (stays === undefined || stays === null) return ''
  if (stays === 0) return 'stays out'
  const { allOutAt } = staggeredEntry(timesOf(ladder.levels))
  return `${stays === allOutAt ? '' : '+'}${rounded(allOutAt - stays)} ${ladder.unit ?? 'min'}`
}

const timesOf = (levels: readonly { readonly value: number | null }[]): number[] =>
  levels.flatMap(({ value }) => (value === null ? [] : [value]))

/** Without the dust of binary fractions. */
const rounded = (time: number): number => Number(time.toPrecision(9))
