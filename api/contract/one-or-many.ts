import { id } from './quantity.ts'
import { z } from './schema.ts'

/** The most records that one POST may carry. */
export const mostAtOnce = 5000

/** A value that is kept though it is unlikely: where it stood in what was sent, and the question it raises. */
export const Doubt = z.object({ pointer: z.string(), detail: z.string() }).openapi('Doubt')
export type Doubt = z.infer<typeof Doubt>

/**
 * The body of a POST that takes one record or `{ "items": [...] }`, all or nothing. It is told which of the two it is
 * before it is checked, so that every fault points into what was sent: `#/items/3/spots/0/l`.
 */
export function oneOrMany<Item extends z.ZodType>(item: Item) {
  const many = z.object({ items: z.array(item).min(1).max(mostAtOnce) })
  return z.preprocess(
    (body, context) => {
      const result = isMany(body) ? many.safeParse(body) : item.safeParse(body)
      if (!result.success) {
        for (const issue of result.error.issues)
          context.issues.push({ ...issue, input: undefined } as (typeof context.issues)[number])
      }
      return body
    },
    z.union([many, item]),
  )
}

function isMany(body: unknown): boolean {
  return body !== null && typeof body === 'object' && Array.isArray((body as { items?: unknown }).items)
}

/** What was sent, as a list, and how a pointer to its n-th record begins. */
export type Sent<Item> = {
  readonly items: readonly Item[]
  readonly many: boolean
  readonly at: (index: number) => string
}

export function sentAs<Item extends object>(body: Item | { items: Item[] }): Sent<Item> {
  if (isMany(body)) {
    return { items: (body as { items: Item[] }).items, many: true, at: (index) => `#/items/${index}` }
  }
  return { items: [body as Item], many: false, at: () => '#' }
}

/** The reply to such a POST: the record as it is kept, or all of them, with what is doubtful about what was sent. */
export function keptOf<Shape extends z.ZodRawShape>(shown: z.ZodObject<Shape>) {
  return z.union([
    z.object({ items: z.array(shown), doubts: z.array(Doubt) }),
    shown.extend({ doubts: z.array(Doubt) }),
  ])
}

/** A measured record is not changed: a later one supersedes it, and says why. */
export const correcting = {
  supersedesId: id.nullish(),
  /** The same as `supersedesId`. */
  supersedes: id.nullish(),
  reason: z
    .string()
    .trim()
    .max(1000)
    .nullish()
    .transform((reason) => reason || null),
}

/** What a measured record says of its corrections. */
export const corrected = {
  supersedesId: id.nullable(),
  reason: z.string().nullable(),
  superseded: z.boolean(),
}

/** `?trialId` beside the paging of a list. */
export const oneId = z.object({ id })
