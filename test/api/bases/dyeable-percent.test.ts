import { expect, test } from 'vitest'
import { dyeablePercent } from '#api/bases/dyeable-percent.ts'

test('wool, silk, alpaca, other hair and nylon take acid dye; plant and other synthetic fibres do not', () => {
  const share = (...fibres: string[]) =>
    dyeablePercent(fibres.map((fibre) => ({ fibre, percent: 100 / fibres.length })))
  expect(share('superwash merino', 'tussah silk', 'Nylon', 'baby alpaca')).toBe(100)
  expect(share('cotton', 'linen', 'viscose', 'acrylic', 'polyester')).toBe(0)
  expect(share('wool', 'cotton wool')).toBe(50)
})

test('of a fibre that nobody knows, or of none, nothing is said', () => {
  expect(dyeablePercent([{ fibre: 'moonbeam', percent: 100 }])).toBeNull()
  expect(dyeablePercent([])).toBeNull()
})
