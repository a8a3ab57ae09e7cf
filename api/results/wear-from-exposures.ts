import type { ExposureSeen, Histories } from '#db/histories.ts'
import type { Wear } from '#db/tables.ts'
import { type Place, placesOf } from './places-of.ts'

/** `undated`: an exposure has no end, so that what it did before the reading is not known. */
export type WearSeen = { readonly wear: Wear; readonly undated: boolean; readonly counted: boolean }

const day = 86_400_000
/** Double strokes of one rub, where none were written down: the method's own. */
const strokesOfRub = 10

/**
 * What a skein had been through at a moment: the sum over its own and its shared placements, those under foil left out,
 * of the exposures that had ended by then. Light counts the days that had gone by.
 */
export function wearFromExposures(skeinId: string, at: number, histories: Histories): WearSeen {
  const wear: Record<string, number> = {}
  let undated = false
  let counted = false
  for (const place of placesOf(skeinId, histories)) {
    if (place.covered) continue
    for (const exposure of histories.exposures.get(place.vesselId) ?? []) {
      const amount = amountOf(exposure, place, at)
      if (amount === undefined) undated = true
      else if (amount > 0) {
        const axis = axisOf(exposure)
        wear[axis] = (wear[axis] ?? 0) + amount
        counted = true
      }
    }
  }
  return { wear, undated, counted }
}

/** Whether two wears say the same; days in the light may differ by the day on which they were counted. */
export function isSameWear(one: Wear, other: Wear): boolean {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].every((axis) => {
    const off = Math.abs((one[axis] ?? 0) - (other[axis] ?? 0))
    return axis.endsWith(' days') ? off <= 1 : off === 0
  })
}

function axisOf({ protocol }: ExposureSeen): string {
  return protocol.startsWith('X') ? `${protocol} days` : protocol
}

function amountOf(exposure: ExposureSeen, place: Place, at: number): number | undefined {
  const last = Math.min(at, place.until ?? Infinity, place.outAt?.getTime() ?? Infinity)
  if (exposure.protocol.startsWith('X')) {
    if (!exposure.startedAt) return undefined
    const from = Math.max(exposure.startedAt.getTime(), place.inAt?.getTime() ?? -Infinity)
    const to = Math.min(exposure.endedAt?.getTime() ?? Infinity, last)
    return Math.max(0, Math.round((to - from) / day))
  }
  if (!exposure.endedAt) return undefined
  const ended = exposure.endedAt.getTime()
  if (place.inAt && ended < place.inAt.getTime()) return 0
  if (ended > Math.min(at, place.until ?? Infinity)) return 0
  const started = exposure.startedAt?.getTime() ?? ended
  if (place.outAt && started > place.outAt.getTime()) return 0
  if (exposure.protocol.startsWith('rub')) return exposure.strokes ?? strokesOfRub
  return exposure.cycles ?? 1
}
