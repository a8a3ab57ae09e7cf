import { z } from '#api/contract/schema.ts'
import { compareTwo, type TwoSamples } from '#api/science/statistics/two-samples.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'
import { refuseAt } from './measured.ts'
import { mostValues, oneSided, twoSided, value, values } from './values.ts'

const equivalence = z.object({
  pLower: z.number(),
  pUpper: z.number(),
  p: z.number(),
  lower: z.number(),
  upper: z.number(),
  equivalent: z.boolean(),
})

/** Two groups, or pairs: `POST /api/calculations/two-samples`. */
export const twoSamples = calculation({
  name: 'two-samples',
  summary: 'The difference of two groups or of pairs, within a margin, and no worse',
  request: z.object({
    a: values,
    b: values,
    paired: z.boolean().default(false),
    pooled: z.boolean().default(false),
    margin: z.number().gt(0).max(1e100).optional(),
    level: twoSided,
    confidence: oneSided,
  }),
  reply: z.object({
    difference: z.number(),
    welch: z.boolean(),
    se: z.number().optional(),
    df: z.number().optional(),
    t: z.number().optional(),
    p: z.number().optional(),
    lower: z.number().optional(),
    upper: z.number().optional(),
    unavailable: z.string().optional(),
    equivalence: z.union([equivalence, unavailable]).optional(),
    noWorse: z.union([z.object({ upper: z.number(), holds: z.boolean() }), unavailable]).optional(),
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    refuseLongLists(
      (['a', 'b'] as const).map((name) => ({
        path: [name],
        list: body[name],
        item: value,
        most: mostValues,
      })),
    )
    return undefined
  },
  compute: ({ a, b, paired, pooled, margin, level, confidence }) => {
    if (paired && a.length !== b.length)
      refuseAt(
        ['b'],
        `Pairs need two lists of equal length; there are ${a.length} in a and ${b.length} in b.`,
      )
    if (!paired && a.length + b.length > mostValues)
      refuseAt(['b'], `Both lists together take at most ${mostValues} values.`)
    const found = compareTwo(a, b, { paired, pooled, margin, level, confidence })
    return {
      ...found,
      method: methodOf({ paired, pooled, margin }),
      cautions: cautionsOf(found, a, b, paired),
    }
  },
})

function methodOf({
  paired,
  pooled,
  margin,
}: {
  paired: boolean
  pooled: boolean
  margin: number | undefined
}): string {
  const how = paired
    ? 'Student’s t of the differences within pairs'
    : pooled
      ? 'Student’s t with one spread for both groups'
      : 'Welch’s t, each group with its own spread'
  const beside =
    margin === undefined
      ? ''
      : '; two one-sided tests of equivalence, and the upper one-sided limit for no worse, smaller being better'
  return `${how}${beside}. The difference is b less a.`
}

function cautionsOf(
  found: TwoSamples,
  a: readonly number[],
  b: readonly number[],
  paired: boolean,
): string[] {
  const cautions: string[] = []
  if ('unavailable' in found) return cautions
  if (Math.min(a.length, b.length) < 3)
    cautions.push(
      paired ? 'Two pairs are too few to rely on.' : 'A group of fewer than 3 units is too small to rely on.',
    )
  const { equivalence: within } = found
  if (within && 'equivalent' in within && !within.equivalent && found.p > 0.05)
    cautions.push('No difference was found, which does not show that there is none.')
  return cautions
}
