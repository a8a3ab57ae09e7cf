import { expect, test } from 'vitest'
import { betaFront, incompleteBeta, logBeta } from '#api/science/statistics/incomplete-beta.ts'
import { logGamma } from '#api/science/statistics/log-gamma.ts'
import { log1pMinus } from '#api/science/statistics/log1p-minus.ts'
import { root } from '#api/science/statistics/root.ts'
import { expectClose } from '#test/support/close-to.ts'

// Γ(½) = √π, Γ(n) = (n − 1)!: Abramowitz & Stegun (1964), 6.1.8 and 6.1.5
test('the gamma function of halves and whole numbers', () => {
  expectClose(logGamma(0.5), Math.log(Math.PI) / 2, 1e-14)
  expectClose(logGamma(6), Math.log(120), 1e-14)
  expectClose(logGamma(21), Math.log(2_432_902_008_176_640_000), 1e-14)
  expectClose(logGamma(0.01), 4.599479878042022, 1e-14)
})

test('the beta function of whole numbers is made of factorials', () => {
  expectClose(logBeta(3, 4), Math.log((2 * 6) / 720), 1e-13)
  expectClose(Math.exp(betaFront(3, 4, 0.25, 0.75)), 0.25 ** 3 * 0.75 ** 4 * 60, 1e-13)
})

// I_x(2, 3) = 6x² − 8x³ + 3x⁴
test('the incomplete beta function of whole numbers is a polynomial', () => {
  for (const x of [0.01, 0.4, 0.9])
    expectClose(
      incompleteBeta(2, 3, { odds: x / (1 - x) }).lower,
      6 * x ** 2 - 8 * x ** 3 + 3 * x ** 4,
      1e-13,
    )
})

test('ln(1 + u) − u is its series where u is small', () => {
  expectClose(log1pMinus(1e-5), -5e-11 + 1e-15 / 3 - 1e-20 / 4, 1e-14)
  expectClose(log1pMinus(0.5), Math.log(1.5) - 0.5, 1e-14)
})

test('a root needs a change of sign', () => {
  expect(() => root((x) => x * x + 1, -1, 1)).toThrow(RangeError)
  expectClose(root(Math.cos, 1, 2), Math.PI / 2, 1e-15)
})
