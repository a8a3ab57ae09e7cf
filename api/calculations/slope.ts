import { z } from '#api/contract/schema.ts'
import { straightLine } from '#api/science/statistics/straight-line.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'
import { refuseAt } from './measured.ts'
import { mostValues, twoSided, value, values } from './values.ts'

const estimate = { estimate: z.number(), se: z.number(), lower: z.number(), upper: z.number() }
const withoutSpread = z.object({ estimate: z.number(), unavailable: z.string() })
const number = z.union([z.number(), unavailable])

/** A straight line through points: `POST /api/calculations/slope`. */
export const slope = calculation({
  name: 'slope',
  summary: 'A straight line through points, with the limits of its slope',
  request: z.object({ x: values, y: values, level: twoSided }),
  reply: z.object({
    intercept: z.union([z.object(estimate), withoutSpread, unavailable]),
    slope: z.union([z.object({ ...estimate, t: z.number(), p: z.number() }), withoutSpread, unavailable]),
    df: z.number(),
    residualSd: number,
    rSquared: number,
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    refuseLongLists(
      (['x', 'y'] as const).map((name) => ({
        path: [name],
        list: body[name],
        item: value,
        most: mostValues,
      })),
    )
    return undefined
  },
  compute: ({ x, y, level }) => {
    if (x.length !== y.length)
      refuseAt(['y'], `Each x has one y; there are ${x.length} in x and ${y.length} in y.`)
    const cautions =
      x.length === 3 ? ['Three points leave one degree of freedom: the limits are very wide.'] : []
    return {
      ...straightLine(x, y, { level }),
      method:
        'Straight line by least squares with t intervals. Each point counts as an independent reading: readings of one specimen are not, so take a slope for each specimen and compare those.',
      cautions,
    }
  },
})
