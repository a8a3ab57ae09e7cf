import { expect, test } from 'vitest'
import { potFit, rescaleRecipe } from '#api/science/recipe/rescale.ts'
import { grams, millilitres, millilitresPerGram } from '#api/science/units.ts'

const recipe = [
  { name: 'Blue', per100g: 1.5, measure: 'g' },
  { name: 'Vinegar', per100g: 60, measure: 'mL' },
  { name: 'Salt', per100g: 0, measure: 'g' },
] as const

test('amounts and bath go up and down with the fibre', () => {
  const { lines, bath } = rescaleRecipe(recipe, grams(250), { liquorRatio: millilitresPerGram(30) })
  expect(lines.map(({ amount }) => amount)).toEqual([3.75, 150, 0])
  expect(bath).toBe(7500)
})

test('each amount carries the error of its own tool', () => {
  const { lines, cautions } = rescaleRecipe(recipe, grams(20), {
    scaleStep: grams(0.1),
    measureStep: millilitres(1),
  })
  // 0.3 g ± 0.05 g; 12 mL ± 0.5 mL; nothing to weigh.
  expect(lines.map(({ toolError }) => toolError?.toFixed(2))).toEqual(['16.67', '4.17', undefined])
  expect(cautions).toEqual([
    'Blue: less than 5 steps of a 0.1 g scale. Take it from a stock, or weigh for more yarn at once.',
  ])
})

test('a bath may fill three quarters of its pot, and says so when it is more', () => {
  const ratio = millilitresPerGram(30)
  expect(potFit(millilitres(6000), millilitres(8000), ratio)).toEqual({
    filled: 75,
    fits: 'fits',
    mostFibre: 200,
  })
  expect(potFit(millilitres(6001), millilitres(8000), ratio).fits).toBe('nearly full')
  expect(potFit(millilitres(8001), millilitres(8000), ratio).fits).toBe('too small')
  const { cautions } = rescaleRecipe(recipe, grams(250), { liquorRatio: ratio, pot: millilitres(7000) })
  expect(cautions).toEqual(['The bath does not go into this pot.'])
})

test('a recipe for no yarn is refused', () => {
  expect(() => rescaleRecipe(recipe, grams(0))).toThrow(RangeError)
  expect(() => potFit(millilitres(1), millilitres(0), millilitresPerGram(30))).toThrow(RangeError)
})
