import { wearInWords } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import { counted, figure, listed } from '#api/words/numbers.ts'
import type { Answer, LimitFound } from './answer.ts'
import type { Asked } from './asked.ts'
import { gradeFour } from './light-contrast.ts'
import type { LightOfLots, LotAtDate } from './light-of-lots.ts'
import { lightAxis } from './lots-on-cards.ts'
import type { OpenHalf } from './open-halves.ts'

/** Why a colour got its answer, in one sentence. */
export function reasonOfLight(asked: Asked, found: LightOfLots): string {
  const { why, headline, dates, wool, cards } = found
  const asks = `blue wool ${halfStep(asked.condition.atLeast ?? 0)} or better was asked`
  const [worst] = headline
  const after = (days: number) => `After ${wearInWords({ [lightAxis(asked)]: days })}`
  if (why === 'nothing') return 'No change in light was recorded on a card.'
  if (why === 'few cards')
    return `Read on ${counted(cards, { one: 'card', many: 'cards' })} only; it takes three to say so.`
  if (why === 'wool' && wool)
    return `${after(wool.days)} blue wool ${wool.number} itself had changed by ${figure(gradeFour, 1)}, and this colour less on every card.`
  if (why === 'dates disagree')
    return 'An earlier and a later date disagree about the blue wool that was asked for.'
  if (why === 'early' || !worst) {
    const last = dates.at(-1)
    const so = last ? `It has changed by ${figure(last.contrast, 1)} so far` : 'It has hardly changed'
    return `${so}; light is read once it has changed by ${figure(gradeFour, 1)}.`
  }
  if (why === 'blank')
    return `${after(worst.days)} it was not read on ${listed(headline.flatMap(({ blank }) => blank))}.`
  if (why === 'few wools')
    return `Fewer than four blue wools were read on ${listed(headline.flatMap(({ fewWools }) => fewWools))}.`
  if (why === 'no limit')
    return `${after(worst.days)} it stands like ${worst.ofMeans?.text ?? 'no blue wool that changed'}; the rule asks for no blue wool.`
  const { low, high } = rangeOf(headline)
  if (found.answer === 'holds')
    return `${after(worst.days)} its lowest card (${low.card}) reads ${low.text}; ${asks}.`
  if (found.answer === 'does-not-hold') {
    const best = rangeOf([worst]).high
    return `${after(worst.days)} even its best card (${best.card}) reads ${best.text}; ${asks}.`
  }
  return `${after(worst.days)} its cards read from ${low.text} (${low.card}) to ${high.text} (${high.card}); ${asks}.`
}

type CardRead = {
  readonly card: string
  readonly text: string
  readonly atLeast: number
  readonly atMost: number
}

function rangeOf(lots: readonly LotAtDate[]): { low: CardRead; high: CardRead } {
  const none = { card: '', text: '', atLeast: Number.POSITIVE_INFINITY, atMost: Number.NEGATIVE_INFINITY }
  const read = lots.flatMap(({ cards }) =>
    cards.flatMap(({ card, rating }): CardRead[] => (rating ? [{ ...rating, card }] : [])),
  )
  return {
    low: read.reduce((one, other) => (other.atMost < one.atMost ? other : one), read[0] ?? none),
    high: read.reduce((one, other) => (other.atLeast > one.atLeast ? other : one), read[0] ?? none),
  }
}

/** Every card’s rating, the lowest of them first named. */
export function ratingsFound({ headline, lots }: LightOfLots, answer: Answer['answer']): LimitFound {
  const { low } = rangeOf(headline)
  return {
    worst: Number.isFinite(low.atMost) ? low.atMost : null,
    worstText: low.text || 'not read',
    worstAt: low.card || null,
    all: headline.flatMap(({ cards, lot }) =>
      cards.map(
        ({ card, rating }) =>
          `${lots > 1 ? `${lot}, ` : ''}${card}: ${rating?.text ?? 'no wool has changed'}`,
      ),
    ),
    met: answer === 'holds',
    broken: answer === 'does-not-hold',
    missing: headline.reduce((sum, { blank }) => sum + blank.length, 0),
  }
}

/** Unrounded ratings, of means over the cards, at every date. */
export function figuresOfLight(found: LightOfLots, twin: number | undefined): Answer['figures'] {
  const [worst] = found.headline
  const ratings = found.headline.flatMap(({ cards }) => cards.flatMap(({ rating }) => rating?.rating ?? []))
  // Of several lots the lower stands for its date.
  const dates = [...groupBy(found.dates, ({ days }) => days)].map(([days, lots]): [string, number | null] => {
    const known = lots.flatMap(({ ofMeans }) => ofMeans?.rating ?? [])
    return [`rating at ${days} days`, known.length === lots.length ? Math.min(...known) : null]
  })
  return {
    rating: worst?.ofMeans?.rating ?? null,
    days: worst?.days ?? null,
    lowest: ratings.length === 0 ? null : Math.min(...ratings),
    highest: ratings.length === 0 ? null : Math.max(...ratings),
    lots: found.lots,
    darkTwin: twin ?? null,
    ...Object.fromEntries(dates),
  }
}

/** What was lost on the cards. */
export function lostOnCards(halves: readonly OpenHalf[]): string[] {
  const lost = halves.filter((half) => half.lost)
  if (lost.length === 0) return []
  return [
    `${listed(lost.map(({ skein }) => skein.code))} ${lost.length === 1 ? 'was' : 'were'} lost; what was read before that counts.`,
  ]
}

const halfStep = (value: number): string =>
  Number.isInteger(value) ? String(value) : `${Math.floor(value)}-${Math.ceil(value)}`
