import type { StoodAt } from '#api/science/design/draw-places.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { benchOf } from '#db/plans.ts'

/** A combination of levels, as the draw knows it: alike in whatever order the factors come. */
export const combinationKey = (levelIds: readonly string[]): string => [...levelIds].sort().join(' ')

/** Where the vessels of the sessions drawn so far stand, and their turns: a later draw goes on from these. */
export function vesselsStoodAt({ vessels, given }: Awaited<ReturnType<typeof benchOf>>): StoodAt[] {
  const ofVessel = groupBy(given, (it) => it.vesselId)
  // A packet and the pot that its skeins came from are one unit: one place, the levels of both.
  const units = groupBy(vessels, (it) => `${it.sessionId} ${it.label}`)
  return [...units.values()].flatMap((unit): StoodAt[] => {
    const levels = unit.flatMap(({ id }) => (ofVessel.get(id) ?? []).map(({ levelId }) => levelId))
    const [first] = unit
    if (levels.length === 0 || !first) return []
    return [
      {
        group: combinationKey(levels),
        levels,
        place: Number(first.place) || 0,
        order: first.drawnOrder ?? 0,
      },
    ]
  })
}

/** Where the skeins of the cards drawn so far lie on their cards; both halves of a piece lie at one place. */
export function skeinsStoodAt({ vessels, skeins, given }: Awaited<ReturnType<typeof benchOf>>): StoodAt[] {
  const ofSkein = groupBy(given, (it) => it.skeinId)
  // An envelope in the dark has no turn: nothing has a place in it.
  const cards = new Set(vessels.filter((it) => it.drawnOrder !== null).map(({ id }) => id))
  const pieces = new Map(
    skeins.filter((it) => cards.has(it.vesselId)).map((it) => [`${it.vesselId} ${it.given ?? it.id}`, it]),
  )
  return [...pieces.values()].flatMap((piece): StoodAt[] => {
    const levels = (ofSkein.get(piece.given ?? piece.id) ?? []).map(({ levelId }) => levelId)
    if (levels.length === 0) return []
    return [{ group: combinationKey(levels), levels, place: Number(piece.place) || 0, order: 0 }]
  })
}
