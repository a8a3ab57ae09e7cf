import type { Histories, PlaceSeen, SkeinSeen } from '#db/histories.ts'
import type { Stage } from '#db/tables.ts'

/** A placement in the life of a skein; `until` is the cut, after which a parent's history is no longer shared. */
export type Place = PlaceSeen & { readonly inherited: boolean; readonly until: number | null }

const early: readonly Stage[] = ['soak', 'dye', 'set', 'rinse', 'dry']

/**
 * Where a skein has been: its own placements after those it shares with what it was cut from. What came before the cut
 * is known by the dates. Without them a part is taken to share its parent's vessels, but for stages at which it had a
 * vessel of its own; a twin, which is kept untreated, those up to drying only.
 */
export function placesOf(id: string, histories: Histories, seen: ReadonlySet<string> = new Set()): Place[] {
  const skein = histories.skeins.get(id)
  const own = (histories.places.get(id) ?? []).map((place) => ({ ...place, inherited: false, until: null }))
  if (!skein?.cutFromId || seen.has(id)) return own
  const ownStages = new Set(own.map((place) => place.stage))
  const cut = skein.cutAt?.getTime() ?? null
  const shared = placesOf(skein.cutFromId, histories, new Set([...seen, id]))
    .filter((place) => isShared(place, skein, ownStages))
    .map((place) => ({ ...place, inherited: true, until: earlier(place.until, cut) }))
  return [...shared, ...own]
}

function isShared(place: Place, skein: SkeinSeen, ownStages: ReadonlySet<Stage>): boolean {
  if (skein.cutAt) {
    if (place.inAt) return place.inAt < skein.cutAt
    if (place.heldOn) return place.heldOn <= skein.cutAt.toISOString().slice(0, 10)
  }
  if (skein.role === 'twin' || skein.role === 'dark twin') return early.includes(place.stage)
  return !ownStages.has(place.stage)
}

function earlier(one: number | null, other: number | null): number | null {
  if (one === null || other === null) return one ?? other
  return Math.min(one, other)
}
