import { cielabDifference } from './cielab-difference.ts'
import { chroma, hueOf, type Lab } from './lab.ts'

/** Below this a part of the difference is handling noise and gets no word. */
const sayFrom = 0.5
/** Below this a careful eye sees it side by side: "slightly". */
const plainFrom = 1.5
/** From here on it is another colour: "much". */
const muchFrom = 6
/** Below this mean chroma a colour is near grey: its cast is named, not its hue. */
const nearGrey = 5

/**
 * In which way a sample differs from its reference, as dyers say it, with "slightly" (0.5 up to 1.5) and "much"
 * (6 and more): lightness first, then brightness, then hue. Empty when no part reaches 0.5.
 *
 * The parts are ΔL*, ΔC* and ΔH*; the three steps are common practice, not a standard. A red or a green is
 * called yellower or bluer, a yellow or a blue redder or greener.
 *
 * @example
 * directionInWords({ L: 45, a: 25, b: -7 }, { L: 52, a: 22, b: -6 }) // ['much lighter', 'duller']
 * @example
 * directionInWords({ L: 70, a: 0, b: 60 }, { L: 70, a: -4, b: 60 }) // ['greener']
 */
export function directionInWords(reference: Lab, sample: Lab): string[] {
  return parts(reference, sample).map(({ word, size }) => strength(size) + word)
}

/**
 * The same words bare, for lists and for other programs.
 *
 * @example
 * directions({ L: 45, a: 25, b: -7 }, { L: 52, a: 22, b: -6 }) // ['lighter', 'duller']
 */
export function directions(reference: Lab, sample: Lab): string[] {
  return parts(reference, sample).map(({ word }) => word)
}

type Part = { readonly word: string; readonly size: number }

function parts(reference: Lab, sample: Lab): Part[] {
  const { dL, da, db, dC, dH } = cielabDifference(reference, sample)
  const greyish = (chroma(reference) + chroma(sample)) / 2 < nearGrey
  const all = greyish
    ? [part(dL, 'lighter', 'darker'), part(da, 'redder', 'greener'), part(db, 'yellower', 'bluer')]
    : [part(dL, 'lighter', 'darker'), part(dC, 'brighter', 'duller'), huePart(reference, sample, dH)]
  return all.filter(({ size }) => size >= sayFrom)
}

function part(value: number, more: string, less: string): Part {
  return { word: value > 0 ? more : less, size: Math.abs(value) }
}

function huePart(reference: Lab, sample: Lab, dH: number): Part {
  // The hue half-way between the two; straight opposites have none, and are then named from the reference.
  const across = chroma(reference) * chroma(sample)
  const wayA = reference.a * chroma(sample) + sample.a * chroma(reference)
  const wayB = reference.b * chroma(sample) + sample.b * chroma(reference)
  const opposite = Math.hypot(wayA, wayB) <= 1e-9 * across
  const h = opposite ? hueOf(reference.a, reference.b) : hueOf(wayA, wayB)
  if (h < 45 || h >= 315) return part(dH, 'yellower', 'bluer')
  if (h < 135) return part(dH, 'greener', 'redder')
  if (h < 225) return part(dH, 'bluer', 'yellower')
  return part(dH, 'redder', 'greener')
}

function strength(size: number): string {
  if (size >= muchFrom) return 'much '
  return size < plainFrom ? 'slightly ' : ''
}
