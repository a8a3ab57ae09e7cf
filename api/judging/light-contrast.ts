import { wearKey } from '#api/contract/wear.ts'
import { greyScaleDifference } from '#api/science/fastness/change-grade.ts'
import type { ResultSeen, TrialRecord } from '#db/trial-record.ts'

/** The contrast at which light is read: grade 4 of the grey scale for change in colour (ISO 105-B02, domain notes section 3). */
export const gradeFour = 1.7

/**
 * The contrast of a change as the grey scale has it: ΔE_F where the colour was read, ΔE*ab where only the differences are
 * known, else the difference as it was entered.
 *
 * @example
 * lightContrast({ skeinId: 'a', wearKey: '', value: 2, dL: 1, dA: 2, dB: 2 }, []) // 3
 * @example
 * lightContrast({ skeinId: 'a', wearKey: '', value: 2, dL: null, dA: null, dB: null }, []) // 2
 */
export function lightContrast(
  {
    skeinId,
    wearKey: key,
    value,
    dL,
    dA,
    dB,
  }: Pick<ResultSeen, 'skeinId' | 'wearKey' | 'value' | 'dL' | 'dA' | 'dB'>,
  colours: TrialRecord['colours'],
): number {
  if (dL === null || dA === null || dB === null) return value
  const after = colours.find((colour) => colour.skeinId === skeinId && wearKey(colour.wear) === key)
  if (!after) return Math.hypot(dL, dA, dB)
  const { l: L, a, b } = after
  return greyScaleDifference({ L: L - dL, a: a - dA, b: b - dB }, { L, a, b })
}
