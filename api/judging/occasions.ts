import { groupBy } from '#api/science/group-by.ts'

type TimedReading = { readonly sittingId: string; readonly takenAt: Date | null }

/** Sittings that begin within so many hours of each other are one occasion: between them no day has passed. */
const oneOccasion = 12 * 3_600_000

/**
 * To which occasion each sitting belongs. Readings of one occasion have no day-to-day error between them. Sittings
 * without a time stand each for itself.
 *
 * @example
 * const at = (sittingId, takenAt) => ({ sittingId, takenAt: takenAt && new Date(takenAt) })
 * const occasionOf = occasionsOf([at('a', '2026-03-01T09:00Z'), at('b', '2026-03-01T15:00Z'), at('c', '2026-03-02T09:00Z'), at('d', null)])
 * ['a', 'b', 'c', 'd'].map(occasionOf) // ['a', 'a', 'c', 'd']
 */
export function occasionsOf(readings: readonly TimedReading[]): (sittingId: string) => string {
  const begun = [...groupBy(readings, (it) => it.sittingId)].flatMap(([sittingId, mine]) => {
    const times = mine.flatMap((it) => (it.takenAt === null ? [] : [new Date(it.takenAt).getTime()]))
    return times.length === 0 ? [] : [{ sittingId, at: Math.min(...times) }]
  })
  begun.sort((a, b) => a.at - b.at)
  const occasions = new Map<string, string>()
  let current = begun[0]
  for (const it of begun) {
    if (!current || it.at - current.at >= oneOccasion) current = it
    occasions.set(it.sittingId, current.sittingId)
  }
  return (sittingId) => occasions.get(sittingId) ?? sittingId
}
