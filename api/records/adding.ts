import { mostFaults } from '#api/contract/faults.ts'
import type { Doubt } from '#api/contract/one-or-many.ts'
import { type Fault, Problem } from '#api/contract/problem.ts'
import type { SkeinChange } from '#db/skein-change.ts'

/** How records that are written together report back. */
export type Adding = {
  /** How a pointer to the n-th record begins; `#/items/3` unless said. */
  readonly at?: (index: number) => string
  /** Takes the doubts that were found; without it they are not looked for. */
  readonly doubts?: Doubt[] | undefined
  /** Takes the skeins that changed along. */
  readonly skeins?: SkeinChange[] | undefined
}

export const inItems = (index: number) => `#/items/${index}`

/** Throws one refusal with all its faults, if there are any. */
export function refuseFaults(faults: readonly Fault[], sentence = 'Some of this cannot be kept as it is.') {
  if (faults.length > 0) throw new Problem('at-fault', sentence, faults.slice(0, mostFaults))
}

/** Needed of what is lost, and of nothing else. */
export function faultOfLoss(
  { status, lostReason }: { status?: string | undefined; lostReason?: string | null | undefined },
  pointer: string,
): Fault[] {
  if (status === 'lost' && !lostReason)
    return [{ pointer: `${pointer}/lostReason`, detail: 'Say how it was lost; it stays in every count.' }]
  return []
}
