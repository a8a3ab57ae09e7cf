import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compareSlopes, slopesOfSpecimens } from '#api/science/statistics/slopes-of-specimens.ts'
import { placeOnLine, straightLine } from '#api/science/statistics/straight-line.ts'
import Norris from '#test/reference/stats/nist/Norris.json' with { type: 'json' }
import washes from '#test/reference/stats/wash-slopes.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Found = any

// NIST Statistical Reference Datasets, certified values
test('the line of Norris to nine digits and more', () => {
  const { certified, data } = Norris
  const found: Found = straightLine(data.x, data.y)
  expectClose(found.slope.estimate, certified.slope.estimate.value, 1e-13)
  expectClose(found.slope.se, certified.slope.sd.value, 1e-11)
  expectClose(found.intercept.estimate, certified.intercept.estimate.value, 1e-11)
  expectClose(found.intercept.se, certified.intercept.sd.value, 1e-11)
  expectClose(found.residualSd, certified.residualSD.value, 1e-11)
  expectClose(found.rSquared, certified.rSquared.value, 1e-13)
  expectClose(found.slope.t ** 2, certified.regression.F.value, 1e-10)
})

const courseOf = (specimen: string) => {
  const rows = washes.data.rows.filter((row) => row.specimen === specimen)
  return { x: rows.map(({ cycle }) => cycle), y: rows.map(({ deltaE }) => deltaE) }
}

// R 4.2.2, lm and predict: test/reference/stats/wash-slopes.json
test.each(washes.expected.perSpecimen)('specimen $specimen by itself', (known) => {
  const { x, y } = courseOf(known.specimen)
  const found: Found = straightLine(x, y)
  expect(found.df).toBe(known.df)
  expectClose(found.intercept.estimate, known.intercept, 1e-9)
  expectClose(found.intercept.se, known.seIntercept, 1e-9)
  expectClose(found.intercept.lower, known.interceptLower95, 1e-9)
  expectClose(found.intercept.upper, known.interceptUpper95, 1e-9)
  expectClose(found.slope.estimate, known.slope, 1e-9)
  expectClose(found.slope.se, known.seSlope, 1e-9)
  expectClose(found.slope.lower, known.slopeLower95, 1e-9)
  expectClose(found.slope.upper, known.slopeUpper95, 1e-9)
  expectClose(found.slope.t, known.tSlope, 1e-9)
  expectClose(found.slope.p, known.pSlope, 1e-9)
  expectClose(found.residualSd, known.sigma, 1e-9)
  expectClose(found.rSquared, known.r2, 1e-9)
  for (const place of known.predictions) {
    const at: Found = placeOnLine(x, y, { at: place.x })
    expectClose(at.fit, place.fit, 1e-9)
    expectClose(at.se, place.se, 1e-9)
    expectClose(at.line.lower, place.ciLower, 1e-9)
    expectClose(at.line.upper, place.ciUpper, 1e-9)
    expectClose(at.reading.lower, place.piLower, 1e-9)
    expectClose(at.reading.upper, place.piUpper, 1e-9)
  }
})

const coursesOf = (treatment: string) =>
  [...new Set(washes.data.rows.filter((row) => row.treatment === treatment).map((row) => row.specimen))].map(
    courseOf,
  )

test.each(['15', '30'] as const)('the specimens of treatment %s are its data', (treatment) => {
  const known = washes.expected.stage2[treatment]
  const { mean, slopes }: Found = slopesOfSpecimens(coursesOf(treatment))
  expect(slopes).toHaveLength(known.n)
  expectClose(mean.mean, known.meanSlope, 1e-9)
  expectClose(mean.sd, known.sdSlope, 1e-9)
  expectClose(mean.lower, known.lower95, 1e-9)
  expectClose(mean.upper, known.upper95, 1e-9)
  expectClose(mean.t, known.t, 1e-9)
  expectClose(mean.p, known.p, 1e-9)
})

test('two treatments are compared by the slopes of their specimens', () => {
  const known = washes.expected.stage2.welchDifference30minus15
  const found: Found = compareSlopes(coursesOf('15'), coursesOf('30'))
  expectClose(found.difference, known.difference, 1e-9)
  expectClose(found.t, known.t, 1e-9)
  expectClose(found.df, known.df, 1e-9)
  expectClose(found.p, known.p, 1e-9)
  expectClose(found.lower, known.lower95, 1e-9)
  expectClose(found.upper, known.upper95, 1e-9)
  // The careless analysis, with every reading a unit, is surer by far.
  expect(found.p).toBeGreaterThan(100 * washes.expected.wrong_pooledAnova[2]!.p!)
})

test('a specimen that was read once has no slope', () => {
  expect(slopesOfSpecimens([{ x: [3], y: [1] }]).mean).toHaveProperty('unavailable')
  expect(compareSlopes([{ x: [3], y: [1] }], [])).toHaveProperty('unavailable')
})

test('points on a line keep its estimates and have no limits', () => {
  const found: Found = straightLine([0.1, 0.2, 0.3, 0.7], [1.3, 1.6, 1.9, 3.1])
  expectClose(found.slope.estimate, 3, 1e-14)
  expectClose(found.intercept.estimate, 1, 1e-14)
  expect(found.slope.unavailable).toContain('exactly on a line')
  expect(found.intercept.unavailable).toContain('exactly on a line')
  expect(found.slope).not.toHaveProperty('p')
})

test('two points, one place, and no change in y each get their sentence', () => {
  const two: Found = straightLine([1, 3], [5, 9])
  expect(two.slope).toMatchObject({ estimate: 2, unavailable: expect.stringContaining('Two points') })
  const place: Found = straightLine([2, 2, 2], [1, 2, 3])
  expect(place.slope.unavailable).toContain('All x are equal')
  const flat: Found = straightLine([1, 2, 3], [4, 4, 4])
  expect(flat.slope).toMatchObject({ estimate: 0, unavailable: expect.any(String) })
  expect(flat.rSquared.unavailable).toContain('All y are equal')
})

test('numbers too large for squares get a sentence', () => {
  const found: Found = straightLine([1e200, -1e200, 5], [1, 2, 4])
  expect(found.slope).toHaveProperty('unavailable')
})

test('moving x or y moves the line along', () => {
  const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 4, maxLength: 9 })
  fc.assert(
    fc.property(values, (y) => {
      const x = y.map((_, i) => i)
      const [here, moved]: Found[] = [
        straightLine(x, y),
        straightLine(
          x.map((it) => it + 1000),
          y.map((it) => it + 5000),
        ),
      ]
      fc.pre('se' in here.slope)
      expect(Math.abs(here.slope.estimate - moved.slope.estimate)).toBeLessThan(1e-9)
      expect(Math.abs(here.slope.se - moved.slope.se)).toBeLessThan(1e-9)
    }),
  )
})
