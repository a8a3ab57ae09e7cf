import { expect, test } from 'vitest'
import { bathVolume, liquorRatio } from '#api/science/recipe/liquor.ts'
import { grams, millilitres, millilitresPerGram } from '#api/science/units.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

test('30:1 on 115 g is 3.45 L, as in the reference', () => {
  const wanted = reference.arithmetic_examples.find(({ q }) => q.startsWith('liquor ratio 30:1 on 115 g'))
  expect(bathVolume(grams(115), millilitresPerGram(30)) / 1000).toBeCloseTo(wanted?.a ?? Number.NaN, 12)
})

test('200 mL on 8 g is 25:1, and no fibre has no ratio', () => {
  expect(liquorRatio(millilitres(200), grams(8))).toBe(25)
  expect(() => liquorRatio(millilitres(200), grams(0))).toThrow(RangeError)
})
