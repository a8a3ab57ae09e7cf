import type { Calculation } from './calculation.ts'
import { leastLevel } from './least-level.ts'

/** Every computing address. Add a calculation here and it is served, documented and tried with wrong bodies. */
export const calculations: readonly Calculation[] = [leastLevel]
