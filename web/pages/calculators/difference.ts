import { cie94 } from '#api/science/colour/cie94.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { cmc } from '#api/science/colour/cmc.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { figure } from '#web/form/number-words.ts'

type Named = readonly (readonly [name: string, value: number])[]

/**
 * How plainly a difference is seen, as practice has it.
 *
 * @example
 * howPlain(1.2) // 'A careful eye sees it side by side.'
 */
export function howPlain(dE00: number): string {
  if (dE00 < 0.5) return 'Within the noise of handling.'
  if (dE00 < 2) return 'A careful eye sees it side by side.'
  if (dE00 < 3) return 'Most eyes see it.'
  return dE00 <= 6 ? 'Plain to see.' : 'Another colour.'
}

/** The difference by every usual formula; the weights of CIE94 and CMC are those of the colour before. */
export function formulasOf(before: Lab, after: Lab): Named {
  return [
    ['CIEDE2000', ciede2000(before, after)],
    ['CIELAB, ΔE*ab', cielabDifference(before, after).dE76],
    ['CIE94, textiles', cie94(before, after)],
    ['CIE94, graphic arts', cie94(before, after, { use: 'graphic' })],
    ['CMC 2:1', cmc(before, after)],
    ['CMC 1:1', cmc(before, after, { l: 1 })],
  ]
}

/** Its parts, after minus before. */
export function partsOf(before: Lab, after: Lab): Named {
  const { dL, da, db, dC, dH } = cielabDifference(before, after)
  return [
    ['ΔL*, lightness', dL],
    ['Δa*, redness', da],
    ['Δb*, yellowness', db],
    ['ΔC*, strength of colour', dC],
    ['ΔH*, hue', dH],
  ]
}

/** All of it for a spreadsheet: a line each, a tab between. */
export function differenceAsText(before: Lab, after: Lab): string {
  return [...formulasOf(before, after), ...partsOf(before, after)]
    .map(([name, value]) => `${name}\t${figure(value, 4)}`)
    .join('\n')
}
