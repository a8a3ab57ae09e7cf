import fc from 'fast-check'
import { expect, test } from 'vitest'
import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'

// 3-4-5 triangles: what is left of a length when the noise at a right angle to it is taken off.
test.each([
  [0.5, 0.3, 0.4],
  [0.3, 0.5, -0.4],
  [1.3, 0.5, 1.2],
  [0.7, 0.7, 0],
  [2, 0, 2],
  [0, 2, -2],
])('%d seen over a noise of %d is %d', (value, noise, net) => {
  expect(netOfNoise(value, noise)).toBeCloseTo(net, 12)
})

test('net and noise make the raw length again, and more change is never less net', () => {
  const length = fc.double({ min: 0, max: 100, noNaN: true })
  fc.assert(
    fc.property(length, length, length, (value, more, noise) => {
      const net = netOfNoise(value, noise)
      expect(Math.sign(net) * net * net + noise * noise).toBeCloseTo(value * value, 6)
      expect(netOfNoise(value + more, noise)).toBeGreaterThanOrEqual(net)
    }),
  )
})

test.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('a noise of %d is refused', (noise) => {
  expect(() => netOfNoise(1, noise)).toThrow(RangeError)
})
