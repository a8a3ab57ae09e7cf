import { expect, test } from 'vitest'
import { failingShareUpTo } from '#api/science/statistics/failing-share.ts'
import reference from '#test/reference/stats/binomial-clopper-pearson.json' with { type: 'json' }

// R 4.2.2: qbeta(0.95, x + 1, n − x), every x of 1 to 30 units
test.each(reference.expected.rows)(
  '$x of $n may be up to $oneSidedUpper95',
  ({ x, n, oneSidedUpper95, oneSidedUpper90 }) => {
    expect(failingShareUpTo(x, n)).toBeCloseTo(oneSidedUpper95, 10)
    expect(failingShareUpTo(x, n, 0.9)).toBeCloseTo(oneSidedUpper90, 10)
  },
)

test.each([
  [-1, 3],
  [4, 3],
  [0.5, 3],
  [0, 0],
])('%d of %d is refused', (failing, units) => {
  expect(() => failingShareUpTo(failing, units)).toThrow(RangeError)
})
