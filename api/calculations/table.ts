import { acid } from './acid.ts'
import { amounts } from './amounts.ts'
import type { Calculation } from './calculation.ts'
import { exhaustion } from './exhaustion.ts'
import { leastLevel } from './least-level.ts'

/** Every computing address. Add a calculation here and it is served, documented and tried with wrong bodies. */
export const calculations: readonly Calculation[] = [acid, amounts, exhaustion, leastLevel]
