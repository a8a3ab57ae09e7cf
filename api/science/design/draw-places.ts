import { cheapestMatching } from './cheapest-matching.ts'
import { randomise } from './randomise.ts'
import { type SeededRandom, seededRandom } from './seeded-random.ts'

/** One vessel (or one skein on a card) that wants a place: its name, and the level or combination that it is given. */
export type ToPlace = {
  readonly name: string
  /** Alike for vessels of one level or combination of levels: these are spread over the places. */
  readonly group: string
  /** The levels of a combination, each spread as well as the combinations allow. */
  readonly levels?: readonly string[]
}

export type DrawnPlace = {
  readonly session: string
  readonly vessel: string
  /** Where it stands in the shared pot or on the rack, from 1. */
  readonly place: number
  /** Its turn in the order of working, from 1; drawn apart from the place. */
  readonly order: number
}

/** Where a vessel of an earlier session stood, and its turn; 0 where that is not known. */
export type StoodAt = Pick<ToPlace, 'group' | 'levels'> & { readonly place: number; readonly order: number }

/**
 * Draws by lot where each vessel of a session stands, and in which order they are worked, so that over the sessions
 * each level meets each place, and each turn, as evenly as can be: no place once more than another by more than one, and
 * none twice while there are fewer sessions than places. (A Latin square by rows, each row drawn among those that keep
 * it one: such a row always exists, by König’s theorem on regular bipartite graphs.)
 *
 * Sessions are drawn one after the other, from the seed, the session’s name and what stood before: a session added later
 * leaves the drawn ones as they are and evens out what they left uneven.
 *
 * @param sessions  Of each session, its vessels; one name in one session once.
 * @param seed      Kept with the trial and printed on the bench sheet.
 * @param before    What was drawn earlier.
 * @throws RangeError when a session has a vessel twice.
 *
 * @example
 * const vessels = [{ name: 'a', group: '20 min' }, { name: 'b', group: '75 min' }]
 * drawPlaces([{ session: 'Mon', vessels }, { session: 'Tue', vessels }], 7).filter((it) => it.vessel === 'a').map((it) => it.place).sort() // [1, 2]
 */
export function drawPlaces(
  sessions: readonly { readonly session: string; readonly vessels: readonly ToPlace[] }[],
  seed: number | string,
  before: readonly StoodAt[] = [],
): DrawnPlace[] {
  const places = new Met()
  const orders = new Met()
  for (const it of before) {
    places.add(it, it.place)
    orders.add(it, it.order)
  }
  return sessions.flatMap(({ session, vessels }) => {
    if (new Set(vessels.map(({ name }) => name)).size < vessels.length)
      throw new RangeError(`A vessel is in session “${session}” twice.`)
    const random = seededRandom(`${seed}/${session}`)
    const placed = drawOnce(vessels, places, random)
    const ordered = drawOnce(vessels, orders, random)
    return vessels.map(({ name }, i) => ({
      session,
      vessel: name,
      place: placed[i] ?? 0,
      order: ordered[i] ?? 0,
    }))
  })
}

/** How often each group and each level met each position so far. */
class Met {
  readonly #times = new Map<string, number>()

  add({ group, levels = [] }: Pick<ToPlace, 'group' | 'levels'>, position: number): void {
    for (const mark of [`group ${group}`, ...levels.map((level) => `level ${level}`)]) {
      const key = `${position} ${mark}`
      this.#times.set(key, (this.#times.get(key) ?? 0) + 1)
    }
  }

  /** The combination decides; its levels choose among what is alike to it. */
  cost({ group, levels = [] }: ToPlace, position: number): number {
    const times = (mark: string) => this.#times.get(`${position} ${mark}`) ?? 0
    return levels.reduce((sum, level) => sum + times(`level ${level}`), 1e6 * times(`group ${group}`))
  }
}

/** Positions from 1 for each vessel, the least met first, by lot among alike; they are counted as met. */
function drawOnce(vessels: readonly ToPlace[], met: Met, random: SeededRandom): number[] {
  const rows = randomise(
    vessels.map((_, i) => i),
    random,
  )
  const columns = randomise(
    vessels.map((_, i) => i + 1),
    random,
  )
  const costs = rows.map((row) => {
    const vessel = vessels[row]
    return columns.map((position) => (vessel ? met.cost(vessel, position) : 0))
  })
  const drawn = vessels.map(() => 0)
  for (const [i, column] of cheapestMatching(costs).entries()) {
    const row = rows[i] ?? 0
    const vessel = vessels[row]
    const position = columns[column] ?? 0
    drawn[row] = position
    if (vessel) met.add(vessel, position)
  }
  return drawn
}
