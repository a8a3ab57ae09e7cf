import { groupBy } from '#api/science/group-by.ts'
import type { SkeinRecord } from '#db/trial-record.ts'
import type { Asked } from './asked.ts'
import type { CardWool } from './card-rating.ts'
import { lightContrast } from './light-contrast.ts'
import type { LotOnCard } from './light-of-lots.ts'
import type { OpenHalf } from './open-halves.ts'

/** The kind of light that the condition names: days in the window unless it says otherwise. */
export function lightAxis({ condition }: Pick<Asked, 'condition'>): string {
  return Object.keys(condition.wear).find((axis) => axis.endsWith(' days')) ?? 'X1 days'
}

/** Every lot on every card at every date, with the blue wools of that card. */
export function lotsOnCards(asked: Asked, halves: readonly OpenHalf[]): LotOnCard[] {
  const { trial } = asked
  const axis = lightAxis(asked)
  const changes = (skein: SkeinRecord) => changesOf(asked, skein, axis)
  const woolsOf = (cardId: string): { number: number; at: ReadonlyMap<number, Change> }[] =>
    trial.record.skeins.flatMap((skein) => {
      const onCard = trial.record.places.some(
        (it) => it.skeinId === skein.id && it.vesselId === cardId && !it.covered,
      )
      const number = skein.blueWoolNumber
      if (skein.role !== 'blue wool' || number === null || !onCard) return []
      return [{ number, at: changes(skein) }]
    })
  return [...groupBy(halves, ({ lot, card }) => `${lot} ${card.id}`).values()].flatMap((mine) => {
    const [first] = mine
    if (!first) return []
    const wools = woolsOf(first.card.id)
    const own = mine.map((half) => ({ half, at: changes(half.skein) }))
    const dates = new Set([...own, ...wools].flatMap(({ at }) => [...at.keys()]))
    return [...dates].flatMap((days): LotOnCard[] => {
      const read = own.flatMap(({ at }) => at.get(days) ?? [])
      // What was lost is not expected at later dates; what it showed before counts.
      if (read.length === 0 && own.every(({ half }) => half.lost)) return []
      return [
        {
          card: first.card.label,
          lot: first.lotName,
          days,
          dE: read.length === 0 ? undefined : meanOf(read.map(({ dE }) => dE)),
          contrast: read.length === 0 ? undefined : meanOf(read.map(({ contrast }) => contrast)),
          wools: woolsAt(wools, days),
        },
      ]
    })
  })
}

type Change = { readonly dE: number; readonly contrast: number }

/** Against the half under foil where that was read; else against its own beginning. */
const bases = ['covered', '', 'own']

function changesOf({ trial }: Asked, skein: SkeinRecord, axis: string): ReadonlyMap<number, Change> {
  const found = new Map<number, { basis: number; change: Change }>()
  for (const result of trial.resultsOf(skein.id)) {
    const days = result.wear[axis]
    const basis = bases.indexOf(result.basis)
    if (result.kind !== 'dE00' || days === undefined || basis < 0) continue
    if (Object.keys(result.wear).length > 1 || (found.get(days)?.basis ?? bases.length) <= basis) continue
    const contrast = lightContrast(result, trial.record.colours)
    found.set(days, { basis, change: { dE: result.value, contrast } })
  }
  return new Map([...found].map(([days, { change }]) => [days, change]))
}

/** Several pieces of one wool on a card are its mean. */
function woolsAt(
  wools: readonly { readonly number: number; readonly at: ReadonlyMap<number, Change> }[],
  days: number,
): CardWool[] {
  const read = wools.flatMap(({ number, at }) => {
    const change = at.get(days)
    return change ? [{ number, ...change }] : []
  })
  return [...groupBy(read, (wool) => wool.number)].map(([number, mine]) => ({
    number,
    dE: meanOf(mine.map((wool) => wool.dE)),
    contrast: meanOf(mine.map((wool) => wool.contrast)),
  }))
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, it) => sum + it, 0) / values.length
}
