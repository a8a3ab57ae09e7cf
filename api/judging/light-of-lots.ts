import { lightRating } from '#api/science/fastness/light-rating.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { type CardRating, type CardWool, cardRating, fewestWools } from './card-rating.ts'
import { gradeFour } from './light-contrast.ts'

const fewestCards = 3

/** One lot on one card at one date: its mean change over its skeins there, and the blue wools of that same card. */
export type LotOnCard = {
  readonly card: string
  readonly lot: string
  readonly days: number
  /** Undefined: not read at this date. */
  readonly dE: number | undefined
  readonly contrast: number | undefined
  readonly wools: readonly CardWool[]
}

/** A lot at one date: each card’s rating, and that of the means over its cards. */
export type LotAtDate = {
  readonly lot: string
  readonly days: number
  readonly contrast: number
  readonly cards: readonly { readonly card: string; readonly rating: CardRating | undefined }[]
  readonly ofMeans: CardRating | undefined
  readonly blank: readonly string[]
  readonly fewWools: readonly string[]
}

export type LightOfLots = {
  readonly answer: Verdict
  readonly why:
    | 'ratings'
    | 'wool'
    | 'between'
    | 'early'
    | 'blank'
    | 'few wools'
    | 'few cards'
    | 'no limit'
    | 'dates disagree'
    | 'nothing'
  /** Of each lot the first date at which it had changed by grade 4 itself; the worst lot first. */
  readonly headline: readonly LotAtDate[]
  readonly dates: readonly LotAtDate[]
  /** Where a blue wool itself had reached grade 4, and the colour changed less on every card. */
  readonly wool: { readonly number: number; readonly days: number } | undefined
  readonly cards: number
  readonly lots: number
}

/**
 * Does a colour stand light like blue wool `atLeast` or better? Every lot on every card must read so at the first date at
 * which the lot itself has changed by grade 4 (1.7), or blue wool `atLeast` must have changed by grade 4 and the colour less
 * than it on every card. It does not when the best card of a lot reads less. Three cards or more for a “holds”, two for a “does not hold”.
 *
 * Source: ISO 105-B01 and B02 in outline; interpolation on ln ΔE is common practice.
 *
 * @param atLeast  Blue wool 1–8 in halves; without it the bracket is described and nothing is settled.
 *
 * @example
 * const wools = [[1, 9], [2, 5], [3, 2.57], [4, 1.4]].map(([number, dE]) => ({ number, dE, contrast: dE }))
 * const cards = ['1', '2', '3'].map((card) => ({ card, lot: 'A', days: 28, dE: 1.87, contrast: 1.87, wools }))
 * [lightOfLots(cards, 3.5).answer, lightOfLots(cards, 4).answer, lightOfLots(cards.slice(0, 2), 3.5).answer] // ['holds', 'does-not-hold', 'not-settled']
 */
export function lightOfLots(all: readonly LotOnCard[], atLeast: number | undefined): LightOfLots {
  const dates = [...groupBy(all, (it) => it.lot).values()].flatMap(datesOf)
  const byLot = [...groupBy(dates, (it) => it.lot).values()]
  const headline = byLot
    .flatMap((mine) => mine.find((it) => it.contrast >= gradeFour - 1e-9) ?? [])
    .toSorted((one, other) => lowest(one) - lowest(other))
  const read = all.filter((it) => it.dE !== undefined)
  const cards = new Set(read.map((it) => it.card)).size
  const common = { headline, dates, cards, lots: byLot.length, wool: undefined }
  const open = (why: LightOfLots['why']): LightOfLots => ({ ...common, answer: 'not-settled', why })
  if (read.length === 0) return open('nothing')
  if (atLeast === undefined) return open(headline.length === 0 ? 'early' : 'no limit')
  const wool = woolAbove(all, atLeast)
  const fails = headline.some(
    (it) => isWhole(it) && it.cards.every(({ rating }) => rating !== undefined && rating.atMost < atLeast),
  )
  if (fails && wool) return { ...open('dates disagree'), wool }
  if (fails) return cards < 2 ? open('few cards') : { ...common, answer: 'does-not-hold', why: 'ratings' }
  const holds =
    headline.length === byLot.length &&
    headline.every(
      (it) =>
        isWhole(it) && it.cards.every(({ rating }) => rating !== undefined && rating.atLeast >= atLeast),
    )
  if (holds || wool) {
    if (cards < fewestCards) return open('few cards')
    return { ...common, answer: 'holds', why: holds ? 'ratings' : 'wool', wool }
  }
  if (headline.length < byLot.length) return open('early')
  if (headline.some(({ fewWools }) => fewWools.length > 0)) return open('few wools')
  if (headline.some(({ blank }) => blank.length > 0)) return open('blank')
  return open('between')
}

const isWhole = ({ blank, fewWools }: LotAtDate) => blank.length === 0 && fewWools.length === 0
const lowest = ({ cards }: LotAtDate) =>
  Math.min(...cards.map(({ rating }) => (rating ? Math.max(rating.atLeast, 0) : Number.POSITIVE_INFINITY)))

function datesOf(lot: readonly LotOnCard[]): LotAtDate[] {
  return [...groupBy(lot, (it) => it.days)]
    .toSorted(([one], [other]) => one - other)
    .flatMap(([days, onCards]): LotAtDate[] => {
      const read = onCards.filter(hasChange)
      if (read.length === 0) return []
      const usable = read.filter(({ wools }) => wools.length >= fewestWools)
      return [
        {
          lot: read[0]?.lot ?? '',
          days,
          contrast: meanOf(read.map((it) => it.contrast)),
          cards: usable.map(({ card, dE, wools }) => ({ card, rating: cardRating(dE, wools) })),
          ofMeans: ofMeans(usable),
          blank: onCards.filter((it) => !hasChange(it)).map(({ card }) => card),
          fewWools: read.filter(({ wools }) => wools.length < fewestWools).map(({ card }) => card),
        },
      ]
    })
}

type Read = LotOnCard & { readonly dE: number; readonly contrast: number }
const hasChange = (it: LotOnCard): it is Read => it.dE !== undefined && it.contrast !== undefined

/** Means over the cards first, of the colour and of each wool that all of them hold. */
function ofMeans(cards: readonly Read[]): CardRating | undefined {
  if (cards.length === 0) return undefined
  const wools = groupBy(
    cards.flatMap((card) => card.wools),
    (wool) => wool.number,
  )
  const common = [...wools].flatMap(([number, mine]) =>
    mine.length === cards.length ? [{ number, dE: meanOf(mine.map((wool) => wool.dE)) }] : [],
  )
  return common.length < 2 ? undefined : cardRating(meanOf(cards.map(({ dE }) => dE)), common)
}

/**
 * The first date at which the wool that is asked for had changed by grade 4 on every card, and every lot less than it; none
 * where a later date shows a lot that changed as much as the wool.
 */
function woolAbove(all: readonly LotOnCard[], atLeast: number): LightOfLots['wool'] {
  const number = Math.ceil(atLeast)
  const dates = [...groupBy(all, (it) => it.days)].toSorted(([one], [other]) => one - other)
  const standings = dates.map(([days, onCards]) => ({
    days,
    each: onCards.map((it) => besideWool(it, number)),
  }))
  const first = standings.findIndex(({ each }) => each.every((it) => it === 'less'))
  const later = standings.slice(first)
  if (first < 0 || later.some(({ each }) => each.includes('as much'))) return undefined
  return { number, days: standings[first]?.days ?? 0 }
}

function besideWool({ dE, wools }: LotOnCard, number: number): 'less' | 'as much' | undefined {
  const wool = wools.find((it) => it.number === number)
  if (dE === undefined || !wool || wools.length < fewestWools) return undefined
  // A wool that has stopped changing bounds nothing.
  if (lightRating(dE, wools).left.some((it) => it.number === number)) return undefined
  if (wool.contrast < gradeFour - 1e-9) return undefined
  return dE < wool.dE ? 'less' : 'as much'
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, it) => sum + it, 0) / values.length
}
