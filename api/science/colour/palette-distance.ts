import { ciede2000 } from './ciede2000.ts'
import { cielabDifference } from './cielab-difference.ts'
import type { Lab } from './lab.ts'
import { transport } from './transport.ts'

/** One colour of a speckled or many-coloured yarn, with the share of the yarn it covers. */
export type PaletteColour = { readonly lab: Lab; readonly share: number }

/** So much of a colour before (`from`) went to a colour after (`to`); places in the lists, from 0. */
export type PaletteFlow = { readonly from: number; readonly to: number; readonly share: number }

/**
 * How far a yarn of several colours has moved: the exact earth mover's distance, the least share times colour
 * difference that turns one palette into the other. Shares are scaled to 1 on each side. ΔE00 is not a metric
 * (a detour can be shorter), so the main number is by ΔE*ab.
 *
 * @throws RangeError when a side is empty or its shares are negative or all 0
 *
 * @example
 * paletteDistance([{ lab: { L: 50, a: 20, b: 0 }, share: 1 }], [{ lab: { L: 53, a: 16, b: 0 }, share: 1 }]).distance // 5
 */
export function paletteDistance(
  before: readonly PaletteColour[],
  after: readonly PaletteColour[],
  { ground = 'dE76' }: { ground?: 'dE76' | 'dE00' } = {},
): { readonly distance: number; readonly flows: PaletteFlow[] } {
  const difference =
    ground === 'dE00' ? ciede2000 : (one: Lab, other: Lab) => cielabDifference(one, other).dE76
  const apart = (from: number, to: number) => difference(before[from]!.lab, after[to]!.lab)
  const flows = transport(sharesOf(before), sharesOf(after), apart).map(({ from, to, amount }) => ({
    from,
    to,
    share: amount,
  }))
  return { distance: flows.reduce((sum, { from, to, share }) => sum + share * apart(from, to), 0), flows }
}

function sharesOf(palette: readonly PaletteColour[]): number[] {
  const total = palette.reduce((sum, { share }) => sum + share, 0)
  if (!(total > 0 && total < Number.POSITIVE_INFINITY))
    throw new RangeError('A palette needs at least one colour with a share.')
  return palette.map(({ share }) => share / total)
}
