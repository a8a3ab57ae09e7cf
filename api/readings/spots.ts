import { doubtOf } from '#api/contract/bounds.ts'
import type { Doubt } from '#api/contract/one-or-many.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { mcdm, meanLab } from '#api/science/colour/mean-colour.ts'
import type { Spot } from '#db/tables.ts'

/** What is worked out from the places of one reading. One place says nothing of unevenness. */
export function derivedOf(spots: readonly Spot[]) {
  const labs = spots.map(({ l, a, b }): Lab => ({ L: l, a, b }))
  const mean = meanLab(labs)
  return {
    meanL: mean.L,
    meanA: mean.a,
    meanB: mean.b,
    spotsN: labs.length,
    mcdm: labs.length > 1 ? mcdm(labs) : null,
    spread: labs.length > 1 ? spreadOf(labs) : null,
    clipped: spots.some(isAtAnEnd),
  }
}

/** The largest ΔE00 between two places. */
function spreadOf(labs: readonly Lab[]): number {
  let largest = 0
  for (const [index, one] of labs.entries())
    for (const other of labs.slice(index + 1)) largest = Math.max(largest, ciede2000(one, other))
  return largest
}

function isAtAnEnd({ l, a, b }: Spot): boolean {
  return l === 0 || l === 100 || a === -128 || a === 127 || b === -128 || b === 127
}

/** What is unlikely about a reading's places: kept, and asked about. */
export function doubtsOfSpots(spots: readonly Spot[], pointer: string): Doubt[] {
  const doubts: Doubt[] = []
  for (const [index, spot] of spots.entries()) {
    const at = `${pointer}/spots/${index}`
    for (const [axis, key] of [
      ['l', 'L'],
      ['a', 'a'],
      ['b', 'b'],
    ] as const) {
      const doubt = doubtOf(key, spot[axis])
      if (doubt) doubts.push({ pointer: `${at}/${axis}`, detail: doubt })
    }
    const chroma = Math.hypot(spot.a, spot.b)
    if (chroma > 110)
      doubts.push({
        pointer: at,
        detail: `A chroma of ${Math.round(chroma)} is more than dye gives. Keep it?`,
      })
  }
  return doubts
}
