import { expect, test } from 'vitest'
import { curvePoints, fitForRate } from '#api/science/statistics/exponential-fits.ts'
import { saturation } from '#api/science/statistics/saturation.ts'
import { straightLine } from '#api/science/statistics/straight-line.ts'
import reference from '#test/reference/stats/nls-saturation-steam.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Found = any
const { data, expected } = reference
const found: Found = saturation(data.x, data.y, { margin: data.margin })

// R 4.2.2, nls, and exact profile limits by uniroot: test/reference/stats/nls-saturation-steam.json
test.each(['c', 'a', 'k'] as const)('%s with its standard error and its profile limits', (name) => {
  expectClose(found[name].estimate, expected.estimates[name], 1e-9)
  expectClose(found[name].se, expected.se[name], 1e-9)
  expectClose(found[name].lower, expected.profileCI95[name].lower, 1e-9)
  expectClose(found[name].upper, expected.profileCI95[name].upper, 1e-9)
})

test('what is left over, and whether the shape is right', () => {
  expectClose(found.residualSd, expected.sigma, 1e-9)
  expect(found.df).toBe(expected.df)
  expectClose(found.lackOfFit.F, expected.lackOfFit.F, 1e-9)
  expectClose(found.lackOfFit.p, expected.lackOfFit.p, 1e-9)
})

test('the time to within the margin is given by its profile, which is not even about it', () => {
  const known = expected.timeToWithinMargin
  expectClose(found.timeToMargin.estimate, known.t, 1e-9)
  expectClose(found.timeToMargin.se, known.seDelta, 1e-9)
  expectClose(found.timeToMargin.lower, known.profileLower95, 1e-9)
  expectClose(found.timeToMargin.upper, known.profileUpper95, 1e-9)
  const twoSided90: Found = saturation(data.x, data.y, { margin: data.margin, level: 0.9 })
  expectClose(twoSided90.timeToMargin.upper, known.profileUpper95OneSided, 1e-9)
})

test('a line and a step are the two ends of the rates', () => {
  const points = curvePoints(data.x, data.y)
  expectClose(fitForRate(points, 0).squares, expected.straightLineRSS, 1e-12)
  expectClose(fitForRate(points, Number.POSITIVE_INFINITY).squares, expected.stepRSS, 1e-12)
  const line: Found = straightLine(data.x, data.y)
  expectClose(-fitForRate(points, 0).b, line.slope.estimate, 1e-12)
  expectClose(fitForRate(points, 1e-9).squares, expected.straightLineRSS, 1e-6)
  expectClose(fitForRate(points, 40).squares, expected.stepRSS, 1e-12)
})

test('points on a curve give it back, without limits', () => {
  const time = [0, 1, 2, 4, 8]
  const on: Found = saturation(
    time,
    time.map((t) => 1 + 4 * Math.exp(-t / 2)),
    { margin: 0.5 },
  )
  expectClose(on.c.estimate, 1, 1e-12)
  expectClose(on.a.estimate, 4, 1e-12)
  expectClose(on.k.estimate, 0.5, 1e-12)
  expectClose(on.timeToMargin.estimate, 2 * Math.log(8), 1e-12)
  expect(on.k.unavailable).toContain('exactly on a curve')
})

// Three points with equal steps: exp(−k) is the ratio of the two falls, here 1.5 ÷ 3.
test('three points that fall more slowly lie on one curve', () => {
  const on: Found = saturation([0, 1, 2], [5, 2, 0.5])
  expectClose(on.k.estimate, Math.LN2, 1e-12)
  expectClose(on.c.estimate, -1, 1e-12)
  expect(on.df).toBe(0)
  expect(on.k.unavailable).toContain('Three points')
})

test('a curve that rises to its plateau is a curve too', () => {
  const up: Found = saturation(
    data.x,
    data.y.map((y) => 10 - y),
    { margin: 0.5 },
  )
  expectClose(up.a.estimate, -expected.estimates.a, 1e-9)
  expectClose(up.c.lower, 10 - expected.profileCI95.c.upper, 1e-9)
  expectClose(up.a.lower, -expected.profileCI95.a.upper, 1e-9)
  expectClose(up.timeToMargin.upper, expected.timeToWithinMargin.profileUpper95, 1e-9)
})

test.each([
  ['a straight line', [1, 2, 3, 4], [4, 3, 2, 1], /straight line/],
  ['a fall that grows faster', [0, 1, 2, 3], [9, 8, 5, 0], /straight line/],
  ['a step', [1, 2, 3, 4], [5, 1, 1, 1], /step/],
  ['no change', [1, 2, 3], [2, 2, 2], /do not change/],
  ['three times up and down', [0, 0, 1, 1, 2, 2], [5, 6, 1, 2, 3, 4], /one way/],
  ['two times', [1, 1, 2, 2], [3, 4, 1, 2], /three different times/],
])('%s has no finite curve', (_, time, value, sentence) => {
  expect(saturation(time, value)).toEqual({ converged: false, unavailable: expect.stringMatching(sentence) })
})

test('where the last time is still on the slope there is no upper limit for the time', () => {
  const time = [0, 0, 5, 5, 10, 10, 15, 15]
  const slope: Found = saturation(time, [10.2, 9.8, 8.3, 7.6, 6.4, 5.9, 5.3, 4.4], { margin: 0.5 })
  expect(slope.k).toMatchObject({ lower: null, lowerUnbounded: true, upper: expect.any(Number) })
  expect(slope.c).toMatchObject({ lower: null, lowerUnbounded: true, upper: expect.any(Number) })
  expect(slope.a).toMatchObject({ upper: null, upperUnbounded: true, lower: expect.any(Number) })
  expect(slope.timeToMargin).toMatchObject({ upper: null, upperUnbounded: true, lower: expect.any(Number) })
  expect(slope.k).not.toHaveProperty('upperUnbounded')
})

test('where the first time may be on the plateau the time is only “at most”', () => {
  const time = [5, 5, 10, 10, 20, 20, 40, 40]
  const flat: Found = saturation(time, [9.1, 8.9, 2.6, 2.3, 2.5, 2.2, 2.4, 2.6], { margin: 0.5 })
  expect(flat.k).toMatchObject({ upper: null, upperUnbounded: true, lower: expect.any(Number) })
  expect(flat.timeToMargin).toMatchObject({ lower: null, lowerUnbounded: true, upper: expect.any(Number) })
  expect(flat.c.lower).toBeGreaterThan(2)
})

test('numbers beyond what can be held are said, not shown', () => {
  const late: Found = saturation([1000, 1001, 1002, 1003, 1004], [10, 6, 4, 3.1, 2.4])
  expect(late.a).toHaveProperty('unavailable')
  expectClose(late.k.estimate, 0.6766, 1e-4)
})
