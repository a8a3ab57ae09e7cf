import { z } from '#api/contract/schema.ts'
import {
  type ColourShift,
  type Limits,
  colourShift as shiftOf,
} from '#api/science/statistics/colour-shift.ts'
import type { Unavailable } from '#api/science/statistics/unavailable.ts'
import { calculation, lab, unavailable, workings } from './calculation.ts'
import { isObject, mostPairs } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'
import { refuseAt } from './measured.ts'
import { twoSided } from './values.ts'

const limits = z.union([z.array(z.number()).length(2), unavailable])
const three = z.object({ dL: limits, da: limits, db: limits })
const labs = z.array(lab).min(1).max(mostPairs)

/** How a colour moved, from pairs of readings: `POST /api/calculations/colour-shift`. */
export const colourShift = calculation({
  name: 'colour-shift',
  summary: 'Signed shift of a colour over paired units, with intervals and T²',
  request: z.object({ before: labs, after: labs, level: twoSided }),
  reply: z.object({
    mean: z.object({ dL: z.number(), da: z.number(), db: z.number() }),
    dE00OfMeans: z.number(),
    meanOfDE00: z.number(),
    hotelling: z.union([
      z.object({ T2: z.number(), F: z.number(), df1: z.number(), df2: z.number(), p: z.number() }),
      unavailable,
    ]),
    intervals: three,
    simultaneous: three,
    mcdm: z.object({ before: z.number(), after: z.number() }),
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    refuseLongLists(
      (['before', 'after'] as const).map((name) => ({
        path: [name],
        list: body[name],
        item: lab,
        most: mostPairs,
      })),
    )
    return undefined
  },
  compute: ({ before, after, level }) => {
    if (before.length !== after.length)
      refuseAt(
        ['after'],
        `Each colour before has one after; there are ${before.length} before and ${after.length} after.`,
      )
    const found = shiftOf(before, after, { level })
    return {
      ...found,
      intervals: asLists(found.intervals),
      simultaneous: asLists(found.simultaneous),
      method:
        'Differences within pairs, after less before; Hotelling’s T² of the three together, single t intervals, and the simultaneous intervals of T². ΔE00 of the means beside the mean of ΔE00, which noise makes larger.',
      cautions: cautionsOf(before.length, found),
    }
  },
})

function asLists({ dL, da, db }: ColourShift['intervals']) {
  const list = (it: Limits | Unavailable) =>
    'unavailable' in it ? { unavailable: it.unavailable } : [it[0], it[1]]
  return { dL: list(dL), da: list(da), db: list(db) }
}

function cautionsOf(n: number, { hotelling }: ColourShift): string[] {
  if ('unavailable' in hotelling || n >= 7) return []
  return [
    n === 4
      ? 'With 4 pairs T² can hardly ever find anything: read the single intervals.'
      : 'With fewer than 7 pairs T² finds little: read the single intervals too.',
  ]
}
