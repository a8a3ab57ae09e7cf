import type { Step } from '#api/contract/finding.ts'

/** A side limit as the head of its column: the worst of a grade, the most of a count. */
export function sideName(limit: Step['limits'][number]): string {
  return /better/.test(limit.limit) ? `worst ${limit.label}` : `most ${limit.label}`
}
