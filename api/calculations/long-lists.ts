import { faultsOf, mostFaults } from '#api/contract/faults.ts'
import { type Fault, Problem, pointerTo } from '#api/contract/problem.ts'
import type { z } from '#api/contract/schema.ts'

/** A list in a body: where it stands, what its items are and how many of them one request may carry. */
export type LongList = {
  readonly path: readonly PropertyKey[]
  readonly list: unknown
  readonly item: z.ZodType
  readonly most: number
}

/** Up to this length the schema of the whole body looks for the faults. */
const short = 1000

/**
 * Refuses a long list that is too long or holds faults, before the schema of the whole body sees it: a schema
 * gathers every fault there is, and millions of wrong items would be millions of faults. Only as many are looked
 * for as one refusal carries.
 */
export function refuseLongLists(lists: readonly LongList[]): void {
  for (const { path, list, item, most } of lists) {
    if (!Array.isArray(list) || list.length <= Math.min(short, most)) continue
    const faults = list.length > most ? [tooLong(path, list.length, most)] : faultsIn(list, path, item)
    if (faults.length > 0) throw new Problem('at-fault', 'This cannot be worked out as it is.', faults)
  }
}

function tooLong(path: readonly PropertyKey[], length: number, most: number): Fault {
  return { pointer: pointerTo(path), detail: `This list takes at most ${most}; it has ${length}.` }
}

function faultsIn(list: readonly unknown[], path: readonly PropertyKey[], item: z.ZodType): Fault[] {
  const faults: Fault[] = []
  for (const [place, value] of list.entries()) {
    const parsed = item.safeParse(value, { reportInput: true })
    if (parsed.success) continue
    faults.push(...faultsOf(parsed.error, [...path, place]))
    if (faults.length >= mostFaults) break
  }
  return faults.slice(0, mostFaults)
}
