import { expect, test } from 'vitest'
import { binomialAtLeast } from '#api/science/statistics/binomial.ts'
import table from '#test/reference/stats/binomial-clopper-pearson.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R binom.test: at an exact one-sided 95 % limit the tail is 0.05, which is what the limit is.
test.each(table.expected.rows)('$x of $n: the tail at R’s exact limits is what they leave', (row) => {
  const { n, x } = row
  if (x > 0) {
    expectClose(binomialAtLeast(x, n, row.oneSidedLower95), 0.05, 1e-9)
    expectClose(binomialAtLeast(x, n, row.oneSidedLower90), 0.1, 1e-9)
    expectClose(binomialAtLeast(x, n, row.lower95), 0.025, 1e-9)
  }
  if (x < n) {
    expectClose(1 - binomialAtLeast(x + 1, n, row.oneSidedUpper95), 0.05, 1e-9)
    expectClose(1 - binomialAtLeast(x + 1, n, row.oneSidedUpper90), 0.1, 1e-9)
  }
})

test('of five coins all five fall the same side once in 32, of four once in 16', () => {
  expectClose(binomialAtLeast(5, 5), 1 / 32, 1e-14)
  expectClose(binomialAtLeast(4, 4), 1 / 16, 1e-14)
  // 1 + 8 of 256, counted by hand.
  expectClose(binomialAtLeast(7, 8), 9 / 256, 1e-14)
})

test('none or more is certain, more than all never happens', () => {
  expect(binomialAtLeast(0, 5, 0.3)).toBe(1)
  expect(binomialAtLeast(6, 5, 0.3)).toBe(0)
  expect(binomialAtLeast(3, 5, 0)).toBe(0)
  expect(binomialAtLeast(3, 5, 1)).toBe(1)
  expect(() => binomialAtLeast(1.5, 5)).toThrow(RangeError)
  expect(() => binomialAtLeast(1, 5, 1.1)).toThrow(RangeError)
})
