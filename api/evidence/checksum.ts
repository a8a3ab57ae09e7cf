import { createHash } from 'node:crypto'
import { inFirstOrder } from './first-order.ts'

/** The checksum of a sheet: SHA-256 of its body as JSON with sorted keys, for the database keeps no order of keys. */
export function checksumOf(body: unknown): string {
  return sha256(JSON.stringify(sorted(body)))
}

/** Whether a sheet still is what was published. Those of the first version were reckoned with keys in the order of writing. */
export function checksumMatches({
  body,
  sha256: kept,
}: {
  readonly body: unknown
  readonly sha256: string
}): boolean {
  return kept === checksumOf(body) || kept === sha256(JSON.stringify(inFirstOrder(body)))
}

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex')

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inside]) => [key, sorted(inside)]),
  )
}
