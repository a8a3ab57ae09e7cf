import { z } from '#api/contract/schema.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { lab } from './calculation.ts'
import { refuseLongLists } from './long-lists.ts'

/** A colour before and after, or unstained and stained. */
export const labPair = z.object({ reference: lab, sample: lab })

/** As many pairs of colours as one request may carry. */
export const mostPairs = 100_000

export const labPairs = z.array(labPair).max(mostPairs)

/**
 * Whether these are pairs of colours within their bounds, looked at by hand: for a hundred thousand of them many
 * times faster than a schema, which copies each. False leaves it to the schema to say what is wrong, and where.
 */
export function areLabPairs(pairs: unknown): pairs is z.output<typeof labPairs> {
  if (!Array.isArray(pairs) || pairs.length > mostPairs) return false
  return pairs.every((pair) => isObject(pair) && isLab(pair.reference) && isLab(pair.sample))
}

/** Refuses long lists of pairs with faults, see `refuseLongLists`. */
export function refuseLongPairs(body: unknown): void {
  if (!isObject(body)) return
  refuseLongLists([{ path: ['pairs'], list: body.pairs, item: labPair, most: mostPairs }])
}

export function isLab(value: unknown): value is Lab {
  if (!isObject(value)) return false
  return isWithin(value.L, 0, 100) && isWithin(value.a, -128, 127) && isWithin(value.b, -128, 127)
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

// NaN and the infinities fail one of the comparisons.
function isWithin(value: unknown, least: number, most: number): boolean {
  return typeof value === 'number' && value >= least && value <= most
}
