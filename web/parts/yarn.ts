import type { Lab } from '#api/science/colour/lab.ts'
import { labToSrgb } from '#api/science/colour/lab-to-srgb.ts'

/**
 * Colours side by side without a seam, as a CSS background: two boxes beside each other would leave a hair of grey.
 *
 * @example
 * yarnBackground([{ L: 0, a: 0, b: 0 }, { L: 100, a: 0, b: 0 }]) // 'linear-gradient(90deg, #000000 0% 50%, #ffffff 50% 100%)'
 */
export function yarnBackground(colours: readonly Lab[]): string {
  const share = 100 / Math.max(1, colours.length)
  const stops = colours.map(
    (colour, place) => `${labToSrgb(colour).hex} ${round(place * share)}% ${round((place + 1) * share)}%`,
  )
  return `linear-gradient(90deg, ${stops.join(', ')})`
}

/** Whether a screen can show a colour as it is. */
export function isBeyondScreen(colour: Lab): boolean {
  return !labToSrgb(colour).inGamut
}

function round(per: number): number {
  return Math.round(per * 100) / 100
}
