import { z } from '#api/contract/schema.ts'
import { level } from './calculation.ts'

/** A measured number: large enough for anything, small enough to be squared and summed. */
export const value = z.number().min(-1e100).max(1e100)

/** As many values as all groups of one request may hold. */
export const mostValues = 50_000

/** Groups of one request. */
export const mostGroups = 64

export const values = z.array(value).min(1).max(mostValues)

export const label = z.union([z.string().min(1).max(200), z.number()])

/** Two-sided confidence of intervals. */
export const twoSided = level.default(0.95)

/** One-sided confidence. */
export const oneSided = level.default(0.95)
