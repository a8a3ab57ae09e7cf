import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

// Four libraries agree on these to 3e-6 (the file's note); printed to four decimals.
test.each(textilePairs.pairs)('$name: ΔE76 $de76 with its signed parts', (pair) => {
  const found = cielabDifference(labOf(pair.lab_ref), labOf(pair.lab_sample))
  const printed = {
    dE76: pair.de76,
    dL: pair.dL,
    da: pair.da,
    db: pair.db,
    dC: pair.dC,
    dH: pair.dH_signed,
  }
  for (const part of ['dE76', 'dL', 'da', 'db', 'dC', 'dH'] as const)
    expect(Math.abs(found[part] - printed[part])).toBeLessThanOrEqual(textilePairs.tolerance)
})

test('any two colours: the parts make up the whole, swapping turns their signs, a colour is itself', () => {
  fc.assert(
    fc.property(anyLab(), anyLab(), (one, two) => {
      const there = cielabDifference(one, two)
      const back = cielabDifference(two, one)
      expect(there.dL ** 2 + there.dC ** 2 + there.dH ** 2).toBeCloseTo(there.dE76 ** 2, 6)
      expect(back.dE76).toBe(there.dE76)
      expect(back.dC).toBeCloseTo(-there.dC, 10)
      expect(Math.abs(back.dH)).toBeCloseTo(Math.abs(there.dH), 10)
      const same = cielabDifference(one, one)
      expect(Object.values(same).every((part) => Math.abs(part) === 0)).toBe(true)
    }),
  )
})

test('a hue that crosses 0 turns the short way', () => {
  const nearRed = { L: 50, a: 60, b: -1 }
  expect(cielabDifference(nearRed, { L: 50, a: 60, b: 1 }).dH).toBeCloseTo(2, 3)
  expect(cielabDifference({ L: 50, a: 60, b: 1 }, nearRed).dH).toBeCloseTo(-2, 3)
})

test('hues that almost agree keep their digits', () => {
  // ΔH* = 2·√(C₁C₂)·sin(Δh/2); for C = 100 and a turn of 1e-9 radians that is 1e-7.
  expect(cielabDifference({ L: 50, a: 100, b: 0 }, { L: 50, a: 100, b: 1e-7 }).dH).toBeCloseTo(1e-7, 20)
})
