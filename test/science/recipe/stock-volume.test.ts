import { expect, test } from 'vitest'
import { stockVolume } from '#api/science/recipe/stock-volume.ts'
import { grams, percentInVolume, percentOnFibre } from '#api/science/units.ts'

// Dye suppliers' published examples: 340 g, 1 % depth of a 1 % stock; 2 g, 2 % of 0.1 %.
test.each([
  [340, 1, 1, 340],
  [2, 2, 0.1, 40],
])('%d g at %d %% from a %d %% stock takes %d mL', (fibre, depth, stock, volume) => {
  expect(stockVolume(grams(fibre), percentOnFibre(depth), percentInVolume(stock))).toBeCloseTo(volume, 10)
})

test('a stock without dye gives no volume', () => {
  expect(() => stockVolume(grams(10), percentOnFibre(1), percentInVolume(0))).toThrow(RangeError)
})
