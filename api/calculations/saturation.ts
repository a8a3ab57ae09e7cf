import { z } from '#api/contract/schema.ts'
import { saturation as curveOf, type NoCurve, type Saturation } from '#api/science/statistics/saturation.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'
import { refuseAt } from './measured.ts'
import { mostValues, twoSided, value, values } from './values.ts'

const time = z.number().min(0).max(1e12)
const mostTimes = 5000

const parameter = z.union([
  z.object({
    estimate: z.number(),
    se: z.number(),
    lower: z.number().nullable(),
    upper: z.number().nullable(),
    lowerUnbounded: z.literal(true).optional(),
    upperUnbounded: z.literal(true).optional(),
  }),
  z.object({ estimate: z.number(), unavailable: z.string() }),
])

/** A curve that levels off: `POST /api/calculations/saturation`. */
export const saturation = calculation({
  name: 'saturation',
  summary: 'A curve that levels off, y = c + a·exp(−k·t), and the time to within a margin of its plateau',
  request: z.object({
    time: z.array(time).min(1).max(mostValues),
    value: values,
    margin: z.number().gt(0).max(1e100).optional(),
    level: twoSided,
  }),
  reply: z.union([
    z.object({
      converged: z.literal(true),
      c: parameter,
      a: parameter,
      k: parameter,
      residualSd: z.union([z.number(), unavailable]),
      df: z.number(),
      lackOfFit: z.union([
        z.object({ F: z.number(), df1: z.number(), df2: z.number(), p: z.number() }),
        unavailable,
      ]),
      timeToMargin: parameter.optional(),
      ...workings,
    }),
    z.object({ converged: z.literal(false), unavailable: z.string(), ...workings }),
  ]),
  quick: (body) => {
    if (!isObject(body)) return undefined
    refuseLongLists([
      { path: ['time'], list: body.time, item: time, most: mostValues },
      { path: ['value'], list: body.value, item: value, most: mostValues },
    ])
    return undefined
  },
  compute: ({ time: times, value: list, margin, level }) => {
    if (times.length !== list.length)
      refuseAt(
        ['value'],
        `Each time has one value; there are ${times.length} times and ${list.length} values.`,
      )
    if (new Set(times).size > mostTimes)
      refuseAt(['time'], `A curve takes at most ${mostTimes} different times.`)
    const found = curveOf(times, list, { margin, level })
    return {
      ...found,
      method:
        'Least squares, a and c for each k and then k; limits by profile likelihood (F with 1 and n − 3), standard errors from the linear approximation.',
      cautions: cautionsOf(found, new Set(times).size, margin),
    }
  },
})

function cautionsOf(found: Saturation | NoCurve, times: number, margin: number | undefined): string[] {
  if (!found.converged) return []
  const cautions = ['The curve serves to plan the next times; only a time that was tried can be claimed.']
  if (times === 3)
    cautions.push('With three times any curve goes through their means: its shape is not tested.')
  const { k, a, timeToMargin, lackOfFit } = found
  if ('p' in lackOfFit && lackOfFit.p < 0.05)
    cautions.push(
      'The means of the times lie further from the curve than their spread explains: the shape is wrong.',
    )
  if ('lowerUnbounded' in k)
    cautions.push('A straight line cannot be ruled out: the last time may be far from the plateau.')
  if ('upperUnbounded' in k)
    cautions.push('The first time may be on the plateau already: the answer can only be “at most”.')
  if (timeToMargin && margin !== undefined && Math.abs(a.estimate) <= margin)
    cautions.push('The curve lies within the margin of its plateau from the start.')
  return cautions
}
