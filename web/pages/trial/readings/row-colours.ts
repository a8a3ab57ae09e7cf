import type { Column } from '#api/contract/table.ts'
import type { Lab } from '#api/science/colour/lab.ts'

type Axes = { readonly L: number; readonly a: number; readonly b: number }

/** Where in a row the colours stand that its strip shows: before and after, or the one there is. */
export function colourColumns(columns: readonly Column[]): readonly Axes[] {
  const named = (when: Column['when']) => {
    const at = (as: 'L' | 'a' | 'b') => columns.findIndex((it) => it.as === as && it.when === when)
    const axes = { L: at('L'), a: at('a'), b: at('b') }
    return Math.min(axes.L, axes.a, axes.b) < 0 ? [] : [axes]
  }
  return [...named('before'), ...named('after'), ...named(undefined)].slice(0, 2)
}

/** The colours of a row; none where one of them cannot be read, for a colour is never made up. */
export function coloursOf(cells: readonly string[], axes: readonly Axes[]): readonly Lab[] {
  const colours = axes.map(({ L, a, b }) => ({
    L: numberIn(cells[L], 0, 100),
    a: numberIn(cells[a], -128, 127),
    b: numberIn(cells[b], -128, 127),
  }))
  return colours.some(({ L, a, b }) => Number.isNaN(L + a + b)) ? [] : colours
}

function numberIn(cell: string | undefined, low: number, high: number): number {
  const text = (cell ?? '').trim().replace('−', '-').replace(',', '.')
  const read = /^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN
  return read >= low && read <= high ? read : Number.NaN
}
