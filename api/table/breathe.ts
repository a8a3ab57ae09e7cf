/** So long others wait at most for a long reading, in milliseconds. */
const turn = 20

/**
 * Lets others be answered in between, whenever a turn is over: `const breathe = breather()`, then `await breathe()` every
 * few rows.
 */
export function breather(): () => Promise<void> {
  let since = performance.now()
  return async () => {
    if (performance.now() - since < turn) return
    await new Promise<void>((resolve) => setImmediate(resolve))
    since = performance.now()
  }
}
