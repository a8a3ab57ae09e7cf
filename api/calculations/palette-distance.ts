import { type Fault, Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { paletteDistance as distanceBetween } from '#api/science/colour/palette-distance.ts'
import { calculation, lab, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'

const colour = z.object({ Lab: lab, share: z.number().min(0).max(1.001) })
/** Far more colours than a yarn is told apart into, and still solved within a second or two. */
const mostColours = 256
const palette = z.array(colour).min(1).max(mostColours)

/** How far a yarn of several colours has moved: `POST /api/calculations/palette-distance`. */
export const paletteDistance = calculation({
  name: 'palette-distance',
  summary: 'Exact earth mover’s distance between two palettes, with what went where',
  request: z.object({ before: palette, after: palette, ground: z.enum(['dE76', 'dE00']).default('dE76') }),
  reply: z.object({
    distance: z.number(),
    flows: z.array(z.object({ from: z.number(), to: z.number(), share: z.number() })),
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    refuseLongLists([
      { path: ['before'], list: body.before, item: colour, most: mostColours },
      { path: ['after'], list: body.after, item: colour, most: mostColours },
    ])
    return undefined
  },
  compute: ({ before, after, ground }) => {
    const faults = [...shareFaults(before, 'before'), ...shareFaults(after, 'after')]
    if (faults.length > 0) throw new Problem('at-fault', 'The shares of a palette make 1.', faults)
    const side = (colours: typeof before) => colours.map(({ Lab, share }) => ({ lab: Lab, share }))
    return {
      ...distanceBetween(side(before), side(after), { ground }),
      method: `Exact earth mover’s distance over ${ground === 'dE76' ? 'ΔE76' : 'ΔE00'}; the shares of each side scaled to 1.`,
      cautions:
        ground === 'dE00'
          ? ['ΔE00 is not a metric: a detour can be shorter. Take the distance by ΔE76 as the main number.']
          : [],
    }
  },
})

function shareFaults(colours: readonly { share: number }[], side: string): Fault[] {
  const total = colours.reduce((sum, { share }) => sum + share, 0)
  // 0.999 and 1.001 themselves are within, whatever the machine makes of their sum.
  if (Math.abs(total - 1) <= 0.001 + 1e-12) return []
  return [
    { pointer: pointerTo([side]), detail: `The shares make 1, give or take 0.001; these make ${total}.` },
  ]
}
