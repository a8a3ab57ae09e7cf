import type { Lab } from '#api/science/colour/lab.ts'

/** The same numbers from 0 up to 1 on every run (Park and Miller's generator). */
export function evenNumbers(seed = 1): () => number {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/**
 * Pairs of colours from all over the space, rounded as instruments do, each sample within 10 of its
 * reference on every axis.
 */
export function samplePairs(count: number, { places = 2 } = {}): { reference: Lab; sample: Lab }[] {
  const next = evenNumbers()
  const decimals = (value: number) => Math.round(value * 10 ** places) / 10 ** places
  const near = (value: number, low: number, high: number) =>
    decimals(Math.min(high, Math.max(low, value + (next() - 0.5) * 20)))
  return Array.from({ length: count }, () => {
    const reference = {
      L: decimals(next() * 100),
      a: decimals(next() * 200 - 100),
      b: decimals(next() * 200 - 100),
    }
    const sample = {
      L: near(reference.L, 0, 100),
      a: near(reference.a, -128, 127),
      b: near(reference.b, -128, 127),
    }
    return { reference, sample }
  })
}
