import { differenceCiede2000 } from 'culori'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { labToSrgb } from '#api/science/colour/lab-to-srgb.ts'
import sharma2005 from '#test/reference/colour/ciede2000-sharma.json' with { type: 'json' }
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

// Sharma, Wu and Dalal (2005), Color Res. Appl. 30, 21–30, table 1: printed to four decimals.
describe('the 34 published pairs', () => {
  test.each(sharma2005.pairs)('pair $pair differs by $de00, both ways round', ({ lab1, lab2, de00 }) => {
    expect(Math.abs(ciede2000(labOf(lab1), labOf(lab2)) - de00)).toBeLessThanOrEqual(5e-5)
    expect(Math.abs(ciede2000(labOf(lab2), labOf(lab1)) - de00)).toBeLessThanOrEqual(5e-5)
  })

  test('all 34 are there', () => expect(sharma2005.pairs).toHaveLength(34))
})

// Four libraries agree on these to 3e-6 (the file's note); printed to four decimals.
describe('textile pairs of the reference file', () => {
  test.each(textilePairs.pairs)('$name: $de00, and $de00_kL2 with kL 2', (pair) => {
    const [reference, sample] = [labOf(pair.lab_ref), labOf(pair.lab_sample)]
    expect(Math.abs(ciede2000(reference, sample) - pair.de00)).toBeLessThanOrEqual(1e-4)
    expect(Math.abs(ciede2000(reference, sample, { kL: 2 }) - pair.de00_kL2)).toBeLessThanOrEqual(1e-4)
  })
})

// Some libraries clip L*a*b* to a screen's range or convert it to another white first, and are off by 0.6 to 7.
test('a colour is taken as it is: pairs that no sRGB screen can show have their published difference', () => {
  const unseen = sharma2005.pairs.filter(
    ({ lab1, lab2 }) => !(labToSrgb(labOf(lab1)).inGamut && labToSrgb(labOf(lab2)).inGamut),
  )
  expect(unseen.length).toBeGreaterThanOrEqual(6)
  for (const { lab1, lab2, de00 } of unseen)
    expect(Math.abs(ciede2000(labOf(lab1), labOf(lab2)) - de00)).toBeLessThanOrEqual(5e-5)
})

test('with a mean hue just above 0 the blue rotation is nothing, as in the literal formula', () => {
  // Hues 359 and 2: mean 0.5. An implementation that leaves the mean at 360.5 is 2e-5 away.
  const at = (h: number, c: number) => ({
    L: 50,
    a: c * Math.cos((h * Math.PI) / 180),
    b: c * Math.sin((h * Math.PI) / 180),
  })
  const oracle = differenceCiede2000()
  for (const [h1, h2] of [
    [359, 2],
    [358, 2.5],
    [359.9, 0.3],
  ] as const) {
    const [one, two] = [at(h1, 90), at(h2, 60)]
    expect(ciede2000(one, two)).toBeCloseTo(
      oracle(
        { mode: 'lab65', l: one.L, a: one.a, b: one.b },
        { mode: 'lab65', l: two.L, a: two.a, b: two.b },
      ),
      9,
    )
  }
})

test('any two colours: the same both ways, never negative, and as culori has it', () => {
  const oracle = differenceCiede2000()
  fc.assert(
    fc.property(anyLab(), anyLab(), (one, two) => {
      const difference = ciede2000(one, two)
      const other = oracle(
        { mode: 'lab65', l: one.L, a: one.a, b: one.b },
        { mode: 'lab65', l: two.L, a: two.a, b: two.b },
      )
      expect(difference).toBeGreaterThanOrEqual(0)
      expect(Math.abs(difference - other)).toBeLessThan(1e-6)
      expect(Math.abs(difference - ciede2000(two, one))).toBeLessThan(1e-9)
    }),
    { numRuns: 2000 },
  )
})

test('a colour does not differ from itself', () => {
  fc.assert(
    fc.property(anyLab(), (lab) => {
      expect(ciede2000(lab, lab)).toBe(0)
    }),
  )
})
