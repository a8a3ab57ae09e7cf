import { expect, test } from 'vitest'
import { dyeWeight } from '#api/science/recipe/dye-weight.ts'
import { grams, percentOnFibre } from '#api/science/units.ts'

// Dye suppliers' published examples of depth of shade: 125 g at 2 % and 300 g at 3 %.
test.each([
  [125, 2, 2.5],
  [300, 3, 9],
  [0.5, 0, 0],
])('%d g of fibre at %d %% takes %d g of dye', (fibre, depth, dye) => {
  expect(dyeWeight(grams(fibre), percentOnFibre(depth))).toBeCloseTo(dye, 12)
})
