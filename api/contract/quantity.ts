import { z } from './schema.ts'

/** An id, chosen by the client or made by the server. */
export const id = z.uuid().toLowerCase().openapi({ format: 'uuid' })

const decimalText = /^[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i

/**
 * What a person typed as a number: “12,5” and “12.5” are the same; blank is missing, never zero. Anything else is
 * handed on as it is, for the schema to name.
 *
 * @example
 * readDecimal('12,5') // 12.5
 */
export function readDecimal(typed: unknown): unknown {
  if (typeof typed !== 'string') return typed
  const text = typed.replace(/[\s\u00a0\u202f]/g, '')
  if (text === '') return undefined
  if (!decimalText.test(text)) return typed
  return Number(text.replace(',', '.').replace('−', '-'))
}

type Bounds = {
  readonly min?: number
  readonly max?: number
  readonly moreThan?: number
  readonly whole?: boolean
  readonly step?: number
}

function bounded({ min, max, moreThan, whole, step }: Bounds) {
  let number = whole ? z.number().int() : z.number()
  if (min !== undefined) number = number.min(min)
  if (moreThan !== undefined) number = number.gt(moreThan)
  if (max !== undefined) number = number.max(max)
  if (step !== undefined) number = number.multipleOf(step)
  return number
}

function documented({ min, max, moreThan, whole }: Bounds) {
  return {
    type: whole ? ('integer' as const) : ('number' as const),
    description: 'A number, or text such as "12,5"',
    ...(min !== undefined ? { minimum: min } : {}),
    ...(moreThan !== undefined ? { exclusiveMinimum: moreThan } : {}),
    ...(max !== undefined ? { maximum: max } : {}),
  }
}

/** A number that must be there; text such as “12,5” is read as one. */
export function decimal(bounds: Bounds = {}) {
  return z.preprocess(readDecimal, bounded(bounds)).openapi(documented(bounds))
}

/** A number that may be missing: not sent, null or blank, and then null, never zero. */
export function maybeDecimal(bounds: Bounds = {}) {
  return z
    .preprocess(
      readDecimal,
      bounded(bounds)
        .nullish()
        .transform((value) => value ?? null),
    )
    .openapi({ ...documented(bounds), type: [bounds.whole ? 'integer' : 'number', 'null'] })
}

/** Text of a line or so, trimmed; not blank. */
export const shortText = z.string().trim().min(1).max(200)
/** Text of a paragraph. */
export const longText = z.string().trim().min(1).max(4000)

const blankIsNull = (value: unknown) => (typeof value === 'string' && value.trim() === '' ? null : value)

/** Text that may be missing: blank is null. */
export const maybeText = z
  .preprocess(
    blankIsNull,
    z
      .string()
      .trim()
      .max(4000)
      .nullish()
      .transform((value) => value ?? null),
  )
  .openapi({ type: ['string', 'null'], maxLength: 4000 })

/** A day as `YYYY-MM-DD`, or null. */
export const maybeDay = z
  .preprocess(
    blankIsNull,
    z.iso
      .date()
      .nullish()
      .transform((value) => value ?? null),
  )
  .openapi({ type: ['string', 'null'], format: 'date' })

/** A moment with its offset, or null. */
export const maybeMoment = z
  .preprocess(
    blankIsNull,
    z.iso
      .datetime({ offset: true })
      .nullish()
      .transform((value) => value ?? null),
  )
  .openapi({ type: ['string', 'null'], format: 'date-time' })

export const maybeId = id.nullish().transform((value) => value ?? null)

/** What every stored thing says of itself. */
export const stored = { id, version: z.number().int(), createdAt: z.iso.datetime() }

/** `?limit&after` of every list; `next` in the reply is the `after` of the next page. */
export const listQuery = z.object({
  limit: z.coerce.number().int().min(1).max(500).default(100),
  after: id.optional(),
})

export function listOf<Item extends z.ZodType>(item: Item) {
  return z.object({ items: z.array(item), next: id.nullable() })
}
