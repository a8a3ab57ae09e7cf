import { z } from '#api/contract/schema.ts'

/**
 * One computing address: `POST /api/calculations/<name>`.
 *
 * `request` checks the body and documents it; `compute` is pure and returns the reply, which always carries
 * `method` and `cautions`. A fault that no schema can see (lists of unequal length, a column that is not there)
 * is thrown as `Problem('at-fault', …, [{ pointer, detail }])`. A part without an answer is `{ unavailable }`.
 */
export type Calculation = {
  readonly name: string
  readonly summary: string
  readonly request: z.ZodType
  readonly reply: z.ZodType
  /** Takes a body as it came, gives it back checked, or undefined when the schema shall look for the faults. */
  readonly quick?: (body: unknown) => unknown
  readonly compute: (body: never) => unknown
}

/** Ties the types of request, reply and computation together. */
export function calculation<Request extends z.ZodType, Reply extends z.ZodType>(it: {
  readonly name: string
  readonly summary: string
  readonly request: Request
  readonly reply: Reply
  readonly quick?: (body: unknown) => z.output<Request> | undefined
  readonly compute: (body: z.output<Request>) => z.output<Reply>
}): Calculation {
  return it as Calculation
}

/** A part of a reply that has no answer, with the reason in one plain sentence. */
export const unavailable = z.object({ unavailable: z.string() })

/** What every reply carries beside its numbers. */
export const workings = { method: z.string(), cautions: z.array(z.string()) }

/** CIE L*a*b*, D65/10° unless said: L* 0–100, a* and b* −128–127. */
export const lab = z
  .object({
    L: z.number().min(0).max(100),
    a: z.number().min(-128).max(127),
    b: z.number().min(-128).max(127),
  })
  .openapi('Lab')

/** An amount as it is entered: `{ amount: 0.25, unit: "cup (US)" }`. Units: `api/science/recipe/kitchen-units.ts`. */
export const level = z.number().gt(0).lt(1)
