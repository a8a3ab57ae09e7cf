import { expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { metamerism } from '#api/science/colour/metamerism.ts'
import { spectralWeights } from '#api/science/colour/spectral-weights.ts'
import checks from '#test/reference/colour/spectra-checks.json' with { type: 'json' }
import { labOf } from '#test/support/lab-of.ts'

const [set] = checks.sets
const wavelengths = Array.from({ length: 36 }, (_, i) => 380 + 10 * i)
const named = (name: string) => {
  const sample = set!.samples.find((one) => one.name === name)
  if (!sample) throw new Error(`no ${name}`)
  return { spectrum: { wavelengths, reflectance: sample.R }, expected: sample.expected }
}

// Colours under both lights from the reference file; ΔE00 between them by the formula tested beside.
test.each([
  ['madder red', 'walnut brown'],
  ['turquoise', 'leaf green'],
])('%s and %s differ under each light as their printed colours do', (one, other) => {
  const [a, b] = [named(one), named(other)]
  const found = metamerism(a.spectrum, b.spectrum)
  const printed = (key: 'D65/10deg' | 'A/10deg') =>
    ciede2000(labOf(a.expected[key].Lab), labOf(b.expected[key].Lab))
  expect(found.underD65).toBeCloseTo(printed('D65/10deg'), 2)
  expect(found.underA).toBeCloseTo(printed('A/10deg'), 2)
})

test('equal spectra match everywhere; neutral ones of two depths differ but are not metameric', () => {
  const grey = (R: number) => ({ wavelengths, reflectance: wavelengths.map(() => R) })
  expect(metamerism(grey(0.3), grey(0.3))).toEqual({ underD65: 0, underA: 0, index: 0 })
  const depths = metamerism(grey(0.3), grey(0.2))
  expect(depths.underD65).toBeGreaterThan(5)
  expect(depths.underA).toBeCloseTo(depths.underD65, 6)
  expect(depths.index).toBeCloseTo(0, 6)
})

test('a pair that matches in daylight and parts in lamp light has an index above 0', () => {
  // A wobble that D65 cannot see: a vector at right angles to its three rows of weights.
  const { x, y, z } = spectralWeights(wavelengths)
  const wobble = invisibleTo(
    [[...x], [...y], [...z]],
    wavelengths.map((nm) => Math.sin(nm / 25)),
  )
  const base = wavelengths.map(() => 0.4)
  const pair = metamerism(
    { wavelengths, reflectance: base },
    { wavelengths, reflectance: base.map((R, i) => R + 0.1 * wobble[i]!) },
  )
  expect(pair.underD65).toBeLessThan(1e-9)
  expect(pair.underA).toBeGreaterThan(0.5)
  expect(pair.index).toBeCloseTo(pair.underA, 6)
})

test('a perfectly black yarn is refused', () => {
  const black = { wavelengths, reflectance: wavelengths.map(() => 0) }
  expect(() => metamerism(black, black)).toThrow(RangeError)
})

/** What is left of a curve when everything along the given rows is taken out (Gram and Schmidt). */
function invisibleTo(rows: readonly number[][], curve: readonly number[]): number[] {
  const dot = (one: readonly number[], other: readonly number[]) =>
    one.reduce((sum, value, i) => sum + value * other[i]!, 0)
  const without = (one: readonly number[], other: readonly number[]) =>
    one.map((value, i) => value - (dot(one, other) / dot(other, other)) * other[i]!)
  const square: number[][] = []
  for (const row of rows) square.push(square.reduce((rest, done) => without(rest, done), [...row]))
  return square.reduce((rest, row) => without(rest, row), [...curve])
}
