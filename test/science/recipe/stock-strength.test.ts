import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dyeWeight } from '#api/science/recipe/dye-weight.ts'
import { stockStrength } from '#api/science/recipe/stock-strength.ts'
import { stockVolume } from '#api/science/recipe/stock-volume.ts'
import { grams, millilitres, percentOnFibre } from '#api/science/units.ts'

test('1 g made up to 100 mL is 1 %, which is what % w/v means', () => {
  expect(stockStrength(grams(1), millilitres(100))).toBe(1)
  expect(stockStrength(grams(5), millilitres(1000))).toBe(0.5)
  expect(() => stockStrength(grams(1), millilitres(0))).toThrow(RangeError)
})

test('the stock measured out holds the dye that the depth asks for', () => {
  const some = fc.double({ min: 0.01, max: 500, noNaN: true })
  fc.assert(
    fc.property(some, some, some, (fibre, dye, madeUpTo) => {
      const strength = stockStrength(grams(dye), millilitres(madeUpTo))
      const volume = stockVolume(grams(fibre), percentOnFibre(2), strength)
      const held = (volume * strength) / 100
      expect(held / dyeWeight(grams(fibre), percentOnFibre(2))).toBeCloseTo(1, 10)
    }),
  )
})
