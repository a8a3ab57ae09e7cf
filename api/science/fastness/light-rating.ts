/** A blue wool on the card and how much it has changed, as a mean over the cards. */
export type WoolChange = { readonly number: number; readonly dE: number }

/** What was read off the card; `left` are the wools that could not be used, and why. */
export type LightRating = {
  readonly left: readonly { readonly number: number; readonly why: 'unchanged' | 'stopped' }[]
} & (
  | { readonly kind: 'between'; readonly rating: number; readonly bracket: readonly [number, number] }
  | { readonly kind: 'below' | 'above'; readonly number: number }
  | { readonly kind: 'no-wool' }
)

/**
 * The light fastness of a colour from blue wools exposed beside it: where its change falls between theirs, on the
 * scale of ln ΔE. A higher number lasts longer. Changed more than the weakest wool it is below the card, less than
 * the strongest above it.
 *
 * A wool that has changed no more than a stronger one has stopped changing and bounds nothing; one that has not
 * changed at all has no logarithm. Both are left out and named. Never gives days.
 *
 * Source: ISO 105-B01 in outline (comparison with blue wools exposed alongside); interpolation is common practice.
 *
 * @throws RangeError for a negative or non-finite change, fewer than two wools or a number that comes twice
 *
 * @example
 * lightRating(4, [{ number: 3, dE: 8 }, { number: 4, dE: 2 }]) // { kind: 'between', rating: 3.5, bracket: [3, 4] }
 * @example
 * lightRating(9, [{ number: 3, dE: 8 }, { number: 4, dE: 2 }]) // { kind: 'below', number: 3 }
 */
export function lightRating(specimen: number, wools: readonly WoolChange[]): LightRating {
  check(specimen, wools)
  const { usable, left } = sift(wools)
  const [weakest, strongest] = [usable[0], usable[usable.length - 1]]
  if (weakest === undefined || strongest === undefined) return { kind: 'no-wool', left }
  if (specimen > weakest.dE) return { kind: 'below', number: weakest.number, left }
  if (specimen < strongest.dE) return { kind: 'above', number: strongest.number, left }
  const below = usable.findIndex(({ dE }, i) => specimen <= dE && specimen > (usable[i + 1]?.dE ?? -1))
  const at = Math.max(0, Math.min(below, usable.length - 2))
  const [lower, upper] = [usable[at]!, usable[at + 1]]
  // One wool alone is a bracket only for a colour that changed exactly as much.
  if (upper === undefined)
    return { kind: 'between', rating: lower.number, bracket: [lower.number, lower.number], left }
  const along = Math.log(lower.dE / specimen) / Math.log(lower.dE / upper.dE)
  const rating = lower.number + along * (upper.number - lower.number)
  return { kind: 'between', rating, bracket: [lower.number, upper.number], left }
}

/**
 * A light rating to the nearest half step, as it is written.
 *
 * @example
 * lightGradeText(3.4854) // '3-4'
 * @example
 * lightGradeText(3.2) // '3'
 */
export function lightGradeText(rating: number): string {
  const halves = Math.round(rating * 2)
  return halves % 2 === 0 ? String(halves / 2) : `${(halves - 1) / 2}-${(halves + 1) / 2}`
}

function check(specimen: number, wools: readonly WoolChange[]): void {
  const changes = [specimen, ...wools.map(({ dE }) => dE)]
  if (!changes.every((dE) => dE >= 0 && dE < Number.POSITIVE_INFINITY))
    throw new RangeError('A colour change is 0 or more.')
  if (wools.length < 2) throw new RangeError('A light rating needs at least two blue wools.')
  if (new Set(wools.map(({ number }) => number)).size < wools.length)
    throw new RangeError('Each blue wool stands once.')
}

function sift(wools: readonly WoolChange[]): {
  usable: WoolChange[]
  left: { number: number; why: 'unchanged' | 'stopped' }[]
} {
  const usable: WoolChange[] = []
  const left: { number: number; why: 'unchanged' | 'stopped' }[] = []
  let most = 0
  // From the strongest down: a weaker wool must have changed more than every stronger one.
  for (const wool of [...wools].sort((one, other) => other.number - one.number)) {
    if (wool.dE === 0) left.unshift({ number: wool.number, why: most > 0 ? 'stopped' : 'unchanged' })
    else if (wool.dE <= most) left.unshift({ number: wool.number, why: 'stopped' })
    else {
      usable.unshift(wool)
      most = wool.dE
    }
  }
  return { usable, left }
}
