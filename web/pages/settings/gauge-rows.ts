import type { Lab } from '#api/science/colour/lab.ts'
import { threeOf } from '#web/pages/calculators/in-words.ts'
import { labTyped } from '#web/pages/calculators/lab-typed.ts'

export type GaugeRows = {
  /** Each thing with its repeated readings; those read once are named apart. */
  readonly things: readonly { readonly name: string; readonly readings: readonly Lab[] }[]
  readonly readOnce: readonly string[]
  /** Lines that cannot be read, from 1. */
  readonly unread: readonly { readonly line: number; readonly text: string }[]
}

/**
 * Readings of unchanged things as they are pasted: a line for each, the name of the thing, then L*, a* and b*.
 * A first line of heads is passed over.
 *
 * @example
 * gaugeRows('A 52,1 3,2 −8,0\nA 52,3 3,1 −8,1\nB 40 0 0').readOnce // ['B']
 */
export function gaugeRows(text: string): GaugeRows {
  const things = new Map<string, Lab[]>()
  const unread: { line: number; text: string }[] = []
  for (const [place, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue
    const { name, lab } = rowOf(line)
    if (name !== undefined && lab !== undefined) things.set(name, [...(things.get(name) ?? []), lab])
    else if (place > 0 || /\d/.test(line)) unread.push({ line: place + 1, text: line.trim().slice(0, 60) })
  }
  const all = [...things].map(([name, readings]) => ({ name, readings }))
  return {
    things: all.filter(({ readings }) => readings.length > 1),
    readOnce: all.filter(({ readings }) => readings.length === 1).map(({ name }) => name),
    unread,
  }
}

function rowOf(line: string): { name?: string; lab?: Lab | undefined } {
  const cells = cellsOf(line)
  const numbers = threeOf(cells.slice(-3).join(' '))
  const name = cells.slice(0, -3).join(' ').trim()
  if (numbers === undefined || name === '') return {}
  return { name, lab: labTyped({ L: numbers[0], a: numbers[1], b: numbers[2] }) }
}

/** Cells parted by tabs or semicolons, else by spaces, else by commas. */
function cellsOf(line: string): string[] {
  const text = line.trim()
  const separator = /[\t;]/.test(text) ? /[\t;]/ : /\s/.test(text) ? /\s+/ : ','
  return text.split(separator).map((cell) => cell.trim().replace(/,$/, ''))
}
