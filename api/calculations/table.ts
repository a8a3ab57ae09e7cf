import type { Calculation } from './calculation.ts'

/** Every computing address. Add a calculation here and it is served, documented and tried with wrong bodies. */
export const calculations: readonly Calculation[] = []
