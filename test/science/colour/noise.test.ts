import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { noise, readingsNeeded, smallestDetectable } from '#api/science/colour/noise.ts'

const at = (L: number, a = 0, b = 0) => ({ L, a, b })

// By hand: squares 0.5 and 2 about their means, 2 degrees of freedom.
test('the spread is pooled over things by their degrees of freedom', () => {
  const { sd, df } = noise([
    [at(50), at(51)],
    [at(60, 2), at(62, 2)],
  ])
  expect(df).toBe(2)
  expect(sd.L).toBeCloseTo(Math.sqrt(2.5 / 2), 12)
  expect(sd.a).toBe(0)
})

test('things may be read unequally often, and their colours do not add to the spread', () => {
  const { sd, df } = noise([
    [at(20), at(22), at(24)],
    [at(80), at(80)],
  ])
  expect(df).toBe(3)
  expect(sd.L).toBeCloseTo(Math.sqrt(8 / 3), 12)
})

test('floor and rms are of every pair of readings of one thing', () => {
  const readings = [at(50), at(51), at(53)]
  const pairs = [ciede2000(at(50), at(51)), ciede2000(at(50), at(53)), ciede2000(at(51), at(53))]
  const found = noise([readings])
  expect(found.means).toBe('disjoint groups')
  expect(found.floor).toBeCloseTo((pairs[0]! + pairs[1]! + pairs[2]!) / 3, 12)
  expect(found.rms).toBeCloseTo(Math.sqrt(pairs.reduce((sum, pair) => sum + pair ** 2, 0) / 3), 12)
})

// Four readings part into two and two in three ways: 01|23, 02|13, 03|12.
test('means of two are compared over all partings of four readings', () => {
  const found = noise([[at(50), at(51), at(53), at(57)]], { readingsPerMean: 2 })
  const partings = [ciede2000(at(50.5), at(55)), ciede2000(at(51.5), at(54)), ciede2000(at(53.5), at(52))]
  expect(found.means).toBe('disjoint groups')
  expect(found.floor).toBeCloseTo(partings.reduce((sum, one) => sum + one, 0) / 3, 12)
})

test('with too few readings for two means, pairs are scaled by the root of their number', () => {
  const things = [[at(50), at(51), at(50.5)]]
  const [single, scaled] = [noise(things), noise(things, { readingsPerMean: 3 })]
  expect(scaled.means).toBe('pairs scaled')
  expect(scaled.floor).toBeCloseTo(single.floor / Math.sqrt(3), 12)
  expect(scaled.rms).toBeCloseTo(single.rms / Math.sqrt(3), 12)
})

// For plain distances the mean square between disjoint means of k is exactly 2s² ÷ k; ΔE00 is nearly plain here.
test('the two ways agree on the root mean square', () => {
  const readings = [50, 50.3, 49.8, 50.1, 50.6, 49.7, 50.2, 50.4].map((L) => at(L))
  for (const readingsPerMean of [2, 3, 4]) {
    const direct = noise([readings], { readingsPerMean })
    expect(direct.means).toBe('disjoint groups')
    expect(direct.rms / (noise([readings]).rms / Math.sqrt(readingsPerMean))).toBeCloseTo(1, 3)
  }
})

test('fifty readings in means of ten part in too many ways and are scaled', () => {
  const readings = Array.from({ length: 50 }, (_, i) => at(50 + (i % 7) / 10))
  expect(noise([readings], { readingsPerMean: 10 }).means).toBe('pairs scaled')
})

// Domain notes: 0.3 an axis needs 3 or more placings for a margin of 1.0; mean ΔE76 of two readings is 2.26 SD.
test('0.3 an axis needs 3 readings for a margin of 1', () => {
  const sd = { L: 0.3, a: 0.3, b: 0.3 }
  expect(readingsNeeded(sd, 1)).toBe(3)
  expect(smallestDetectable(sd, 3)).toBeLessThanOrEqual(0.5)
  expect(smallestDetectable(sd, 2)).toBeGreaterThan(0.5)
})

test('a margin that is just met needs no reading more; no noise needs one reading', () => {
  // 2.8 × 0.5 ÷ √4 is 0.7, half of 1.4.
  expect(readingsNeeded({ L: 0.5, a: 0, b: 0 }, 1.4)).toBe(4)
  expect(readingsNeeded({ L: 0, a: 0, b: 0 }, 1)).toBe(1)
})

test('two single readings of a grey lie about 2.26 SD apart when noise is equal on the axes', () => {
  // Normal scores in place of chance: a cube of 9 quantiles an axis, every reading against every other.
  const scores = [-1.593, -0.967, -0.589, -0.282, 0, 0.282, 0.589, 0.967, 1.593]
  const cube = scores.flatMap((L) =>
    scores.flatMap((a) => scores.map((b) => at(50 + 0.3 * L, 0.3 * a, 0.3 * b))),
  )
  let sum = 0
  for (const one of cube)
    for (const two of cube) sum += Math.hypot(one.L - two.L, one.a - two.a, one.b - two.b)
  const { sd } = noise([cube])
  expect(sum / (cube.length * (cube.length - 1)) / sd.L).toBeCloseTo(2.26, 1)
})

// The sample trial's own account: twins in one frame 0.5–0.9, A against B in one frame about 2.7, A against itself
// on another day up to 5.0.
test('the phone of the sample trial sees twins in one frame and not a swatch across days', () => {
  const table = readFileSync(new URL('../../../db/sample-trials/phone-noise.csv', import.meta.url), 'utf8')
  const rows = table.trim().split(/\r?\n/).slice(1)
  const seen = rows
    .map((row) => row.split(','))
    .map(([swatch, frame, L, a, b]) => ({
      swatch,
      frame,
      lab: at(Number(L), Number(a), Number(b)),
    }))
  const inFrames = (one: string, other: string) =>
    [...new Set(seen.map(({ frame }) => frame))].map((frame) => {
      const [x, y] = [one, other].map((name) => seen.find((r) => r.swatch === name && r.frame === frame)!.lab)
      return ciede2000(x!, y!)
    })
  const twins = inFrames('A', 'A-twin')
  expect(Math.min(...twins)).toBeCloseTo(0.5, 0)
  expect(Math.max(...twins)).toBeLessThan(0.95)
  const differ = inFrames('A', 'B')
  expect(differ.reduce((sum, one) => sum + one, 0) / differ.length).toBeCloseTo(2.7, 0)
  const own = seen.filter(({ swatch }) => swatch === 'A').map(({ lab }) => lab)
  const across = own.flatMap((one, i) => own.slice(i + 1).map((other) => ciede2000(one, other)))
  expect(Math.max(...across)).toBeCloseTo(5, 0)
  expect(noise([own]).rms).toBeGreaterThan(Math.max(...twins))
})

test.each([
  ['nothing read', () => noise([])],
  ['a thing read once', () => noise([[at(50), at(51)], [at(50)]])],
  ['half a reading', () => noise([[at(50), at(51)]], { readingsPerMean: 1.5 })],
  ['no reading a mean', () => noise([[at(50), at(51)]], { readingsPerMean: 0 })],
  ['no margin', () => readingsNeeded({ L: 1, a: 1, b: 1 }, 0)],
])('%s is refused', (_name, act) => {
  expect(act).toThrow(RangeError)
})
