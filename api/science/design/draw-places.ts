import { randomise } from './randomise.ts'
import { seededRandom } from './seeded-random.ts'

export type DrawnPlace = {
  readonly session: string
  readonly vessel: string
  /** Where it stands in the shared pot or on the rack, from 1. */
  readonly place: number
  /** Its turn in the order of working, from 1; drawn apart from the place. */
  readonly order: number
}

/**
 * Draws by lot where each vessel of a session stands, and in which order they are worked.
 *
 * Each session is drawn for itself, from the seed and its name: a session added later leaves the drawn ones as they are.
 *
 * @param vessels  Of each session, by name; one name in one session once.
 * @param seed     Kept with the trial and printed on the bench sheet.
 * @throws RangeError when a session has a vessel twice.
 *
 * @example
 * drawPlaces([{ session: 'Mon', vessels: ['20 min', '75 min'] }], 7).map((it) => it.vessel) // ['20 min', '75 min']
 */
export function drawPlaces(
  sessions: readonly { readonly session: string; readonly vessels: readonly string[] }[],
  seed: number | string,
): DrawnPlace[] {
  return sessions.flatMap(({ session, vessels }) => {
    if (new Set(vessels).size < vessels.length)
      throw new RangeError(`A vessel is in session “${session}” twice.`)
    const random = seededRandom(`${seed}/${session}`)
    const places = turns(randomise(vessels, random))
    const orders = turns(randomise(vessels, random))
    return vessels.map((vessel) => ({
      session,
      vessel,
      place: places.get(vessel) ?? 0,
      order: orders.get(vessel) ?? 0,
    }))
  })
}

function turns(drawn: readonly string[]): ReadonlyMap<string, number> {
  return new Map(drawn.map((vessel, place) => [vessel, place + 1]))
}
