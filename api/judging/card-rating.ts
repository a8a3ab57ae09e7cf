import { lightGradeText, lightRating } from '#api/science/fastness/light-rating.ts'

/** A blue wool of a card with its change, and that change as the grey scale has it. */
export type CardWool = { readonly number: number; readonly dE: number; readonly contrast: number }

/** How a colour stands among the blue wools of its own card. */
export type CardRating = {
  /** To the nearest half step, as a rating is given; off the card at least or at most this. */
  readonly atLeast: number
  readonly atMost: number
  /** Unrounded; undefined off the card. */
  readonly rating: number | undefined
  readonly text: string
}

/** Of so many blue wools a card is read; fewer leave too wide a gap. */
export const fewestWools = 4

/**
 * The rating of a colour by the blue wools of its card at one date: ln ΔE between the two that bracket it, to the nearest
 * half step. Undefined where none of them has changed yet.
 *
 * @example
 * cardRating(1.87, [{ number: 3, dE: 2.57 }, { number: 4, dE: 1.4 }]) // { atLeast: 3.5, atMost: 3.5, rating: 3.52, text: 'blue wool 3-4' }
 * @example
 * cardRating(9, [{ number: 1, dE: 8 }, { number: 2, dE: 4 }]) // { atMost: 0.5, text: 'below blue wool 1' }
 */
export function cardRating(
  dE: number,
  wools: readonly Pick<CardWool, 'number' | 'dE'>[],
): CardRating | undefined {
  const found = lightRating(dE, wools)
  if (found.kind === 'no-wool') return undefined
  if (found.kind === 'between') {
    const half = Math.round(found.rating * 2) / 2
    const text = `blue wool ${lightGradeText(found.rating)}`
    return { atLeast: half, atMost: half, rating: found.rating, text }
  }
  const { kind, number } = found
  const text = `${kind} blue wool ${number}`
  return kind === 'below'
    ? { atLeast: Number.NEGATIVE_INFINITY, atMost: number - 0.5, rating: undefined, text }
    : { atLeast: number, atMost: Number.POSITIVE_INFINITY, rating: undefined, text }
}
