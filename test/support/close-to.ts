import { expect } from 'vitest'

/** That a number stands within a relative tolerance of what is known; a known 0 is held absolutely. */
export function expectClose(actual: unknown, known: number, relative: number): void {
  expect(typeof actual, `a number near ${known}`).toBe('number')
  const off = Math.abs((actual as number) - known) / (known === 0 ? 1 : Math.abs(known))
  expect(off, `${actual} against ${known}`).toBeLessThanOrEqual(relative)
}
