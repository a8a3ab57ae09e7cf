import { straight } from '#api/science/pictures/frame.ts'
import { niceScale } from '#api/science/pictures/nice-scale.ts'
import { figure } from '#web/form/number-words.ts'

export type RulerScale = {
  /** Where a value stands, in per cent of the ruler’s width; beyond the ends for what is off the ruler. */
  readonly place: (value: number) => number
  readonly labels: readonly { readonly at: number; readonly words: string; readonly strong: boolean }[]
}

type Interval = { readonly role: string; readonly lower?: number | null; readonly upper?: number | null }

/**
 * The one ruler of all steps: wide enough for every interval that touches two margins either side of nought; what lies
 * wholly beyond is off the ruler and becomes an arrow.
 *
 * @example
 * const { place } = rulerScale([{ role: 'step', lower: -0.47, upper: 0.5 }], 1)
 * [place(0) > 0, place(1) < 100] // [true, true]
 */
export function rulerScale(steps: readonly Interval[], margin: number, boundName = 'margin'): RulerScale {
  const reach = 2 * Math.abs(margin) || 1
  const near = steps.flatMap(({ lower, upper }) =>
    typeof lower === 'number' && typeof upper === 'number' && lower < reach && upper > -reach
      ? [lower, upper]
      : [],
  )
  const low = Math.max(-3 * reach, Math.min(0, ...near))
  const high = Math.min(3 * reach, Math.max(margin, ...near))
  const scale = niceScale(low, high, { fewest: 2, most: 4 })
  const place = straight(scale, { from: 8, to: 82 })
  const room = 17
  const others = scale.ticks
    .filter((tick) => Math.abs(place(tick) - place(margin)) > room)
    .map((at) => ({ at, words: figure(at, scale.decimals), strong: false }))
  return {
    place,
    labels: [...others, { at: margin, words: `${boundName} ${figure(margin, 1)}`, strong: true }],
  }
}
