import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { groupBy } from '#api/science/group-by.ts'
import { blocksAsOne } from './blocks-as-one.ts'

/** One skein with its mean colour. */
export type ColourRow = {
  readonly level: string
  readonly block: string
  readonly unit: string
  readonly lab: Lab
}

/** How far two arms came out apart in one block. */
export type Apart = {
  /** ΔE00 between the mean colours of the two. */
  readonly dE00: number
  /** The measuring error of this ΔE00 over that of two single skeins: less where several were averaged. */
  readonly errorShare: number
}

/**
 * ΔE00 between two arms in each block that holds both, from their mean colours: skein to unit, unit to arm. Blocks that
 * one unit reaches across are one.
 *
 * @example
 * const row = (level, block, L) => ({ level, block, unit: level + block, lab: { L, a: 0, b: 0 } })
 * coloursApart([row('soaked', 'Mon', 50.5), row('dry', 'Mon', 49.5)], 'soaked', 'dry') // [{ dE00: 1.0, errorShare: 1 }]
 */
export function coloursApart(rows: readonly ColourRow[], level: string, reference: string): Apart[] {
  const groupOf = blocksAsOne(rows).groupOf(level, reference)
  const mine = rows.filter((it) => it.level === level || it.level === reference)
  return [...groupBy(mine, (it) => groupOf(it.block)).values()].flatMap((block) => {
    const [one, other] = [level, reference].map((name) => block.filter((it) => it.level === name))
    if (!one?.length || !other?.length) return []
    const units = (its: readonly ColourRow[]) =>
      [...groupBy(its, (it) => it.unit).values()].map((unit) => meanLab(unit.map((it) => it.lab)))
    return [
      {
        dE00: ciede2000(meanLab(units(one)), meanLab(units(other))),
        errorShare: Math.sqrt((1 / one.length + 1 / other.length) / 2),
      },
    ]
  })
}
