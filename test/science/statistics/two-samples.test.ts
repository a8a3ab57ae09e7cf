import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compareTwo } from '#api/science/statistics/two-samples.ts'
import reference from '#test/reference/stats/tost-noninferiority-med.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
const compare = compareTwo as (...of: Parameters<typeof compareTwo>) => any

// R 4.2.2, t.test with mu = margin: test/reference/stats/tost-noninferiority-med.json
const { a, b, marginUpper: margin } = reference.data.twoSample
test.each([
  ['pooled', { pooled: true }],
  ['welch', {}],
] as const)('two samples, %s', (kind, how) => {
  const known = reference.expected.twoSample[kind]
  const found = compare(a, b, { ...how, margin })
  expect(found.welch).toBe(kind === 'welch')
  expect(Math.abs(found.difference - known.difference)).toBeLessThan(1e-15)
  expectClose(found.se, known.se, 1e-9)
  expectClose(found.df, known.df, 1e-9)
  expectClose(found.t, known.tTwoSided, 1e-8)
  expectClose(found.p, known.pTwoSided, 1e-9)
  expectClose(found.lower, known.ci95[0]!, 1e-9)
  expectClose(found.upper, known.ci95[1]!, 1e-9)
  expectClose(found.equivalence.pLower, known.pLower, 1e-9)
  expectClose(found.equivalence.pUpper, known.pUpper, 1e-9)
  expectClose(found.equivalence.p, known.pTOST, 1e-9)
  expectClose(found.equivalence.lower, known.ciLower90, 1e-9)
  expectClose(found.equivalence.upper, known.ciUpper90, 1e-9)
  expect(found.equivalence.equivalent).toBe(known.equivalent)
  expectClose(found.noWorse.upper, known.ciUpper90, 1e-9)
  expect(found.noWorse.holds).toBe(true)
})

test('one sample is a pair with nothing', () => {
  const { x } = reference.data.oneSample
  const known = reference.expected.oneSample
  const nothing = x.map(() => 0)
  const found = compare(nothing, x, { paired: true, margin: 1 })
  expectClose(found.difference, known.mean, 1e-12)
  expectClose(found.se, known.se, 1e-12)
  expect(found.df).toBe(known.df)
  expectClose(found.equivalence.pLower, known.pLower, 1e-9)
  expectClose(found.equivalence.pUpper, known.pUpper, 1e-9)
  expectClose(found.equivalence.lower, known.ciLower90, 1e-9)
  expectClose(found.equivalence.upper, known.ciUpper90, 1e-9)
})

// One-sided limits of pairs on the same days: the blocked ladder of the same file.
test.each(reference.expected.minimumDoseBlocked.steps)('pairs within days at $dose minutes', (step) => {
  const { rows } = reference.data.minimumDoseBlocked
  const at = (dose: number) => rows.filter((row) => row.dose === dose).map(({ y }) => y)
  const found = compare(at(30), at(step.dose), { paired: true, margin: 1 })
  expectClose(found.difference, step.difference, 1e-9)
  expectClose(found.se, step.paired.se, 1e-9)
  expectClose(found.noWorse.upper, step.paired.upper95OneSided, 1e-9)
  expect(found.noWorse.holds).toBe(step.paired.nonInferior)
})

// Student (1908), The probable error of a mean, Biometrika 6, 1–25: additional hours of sleep with two drugs, of the
// same ten patients. Mean difference 1.58, t = 4.06 with 9 df, p = 0.0028 (from memory; R's data set `sleep`).
test('the sleep of ten patients', () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]
  const found = compare(first, second, { paired: true })
  expectClose(found.difference, 1.58, 1e-12)
  expectClose(found.t, 4.0621, 1e-5)
  expect(found.p).toBeCloseTo(0.002833, 6)
  expect([found.lower, found.upper].map((it) => Number(it.toFixed(4)))).toEqual([0.7001, 2.4599])
})

// The same patients as a no-worse-than question, by hand: mean 1.58 and t = 4.0621 give a standard error of 0.38896;
// the one-sided 95 % point of t with 9 df is 1.833 in the table of the NIST/SEMATECH e-Handbook, section 1.3.6.7.2.
// Upper limit 1.58 + 1.833 × 0.38896 = 2.293: no worse within 2.5 hours, not within 2.
test('no worse than a margin, by the limit of a printed table', () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]
  const wide = compare(first, second, { paired: true, margin: 2.5 })
  expect(wide.noWorse.upper).toBeCloseTo(1.58 + 1.833 * 0.38896, 3)
  expect(wide.noWorse.holds).toBe(true)
  expect(compare(first, second, { paired: true, margin: 2 }).noWorse.holds).toBe(false)
})

// R's manual page of t.test on the same data, unpaired: Welch t = −1.8608, df = 17.776, p = 0.07939 (from memory)
test('the same as if the patients were twenty', () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]
  const found = compare(first, second)
  expect(found.t).toBeCloseTo(1.8608, 4)
  expect(found.df).toBeCloseTo(17.776, 3)
  expect(found.p).toBeCloseTo(0.07939, 5)
})

test('values with thirteen common digits keep the digits they have', () => {
  const found = compare([1e12 + 0.25, 1e12 + 0.5, 1e12 + 0.75], [1e12 + 1.25, 1e12 + 1.5, 1e12 + 1.75], {
    pooled: true,
  })
  expectClose(found.difference, 1, 1e-15)
  expectClose(found.se, 0.25 * Math.sqrt(2 / 3), 1e-14)
})

test('what has no spread gets a sentence, and keeps the difference', () => {
  const equal = compare([1, 1], [3, 3], { margin: 1 })
  expect(equal).toMatchObject({ difference: 2, unavailable: expect.stringContaining('equal') })
  expect(equal.equivalence).toHaveProperty('unavailable')
  expect(equal.noWorse).toHaveProperty('unavailable')
  expect(compare([1], [3, 4])).toHaveProperty('unavailable')
  expect(compare([1], [3, 4], { pooled: true }).df).toBe(1)
  expect(compare([1], [3], { paired: true })).toHaveProperty('unavailable')
})

// 1.1 − 1.0, 2.1 − 2.0 and 3.1 − 3.0 are not the same binary number, but one and the same difference.
test('differences that are equal but for rounding have no spread', () => {
  const found = compare([1, 2, 3], [1.1, 2.1, 3.1], { paired: true })
  expect(found.unavailable).toContain('All differences are equal')
})

test('pairs need two lists of equal length', () => {
  expect(() => compareTwo([1, 2], [1], { paired: true })).toThrow(RangeError)
})

test('turning the lists round turns the interval round', () => {
  const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 8 })
  fc.assert(
    fc.property(values, values, (one, other) => {
      const [there, back] = [compare(one, other), compare(other, one)]
      fc.pre(there.se > 1e-9)
      expect(Math.abs(there.lower + back.upper)).toBeLessThan(1e-6 + 1e-9 * Math.abs(there.lower))
      expectClose(there.p, back.p, 1e-6)
    }),
  )
})
