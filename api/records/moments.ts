/** A moment as it leaves: ISO 8601 in UTC, or null. */
export function momentText(at: Date | null): string | null {
  return at?.toISOString() ?? null
}

/** What every record says of itself. */
export function storedOf({ id, version, createdAt }: { id: string; version: number; createdAt: Date }) {
  return { id, version, createdAt: createdAt.toISOString() }
}

/** What every measured record says of its corrections. */
export function correctedOf({
  supersedesId,
  reason,
  superseded,
}: {
  supersedesId: string | null
  reason: string | null
  superseded: boolean
}) {
  return { supersedesId, reason, superseded }
}
