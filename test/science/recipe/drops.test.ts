import { expect, test } from 'vitest'
import { dropsFor, volumeOfDrops } from '#api/science/recipe/drops.ts'
import { millilitres } from '#api/science/units.ts'

test('60 drops are about 3 mL, and between 1.8 and 4.2', () => {
  const { usual, least, most } = volumeOfDrops(60)
  expect([usual, least, most].map((volume) => volume.toFixed(6))).toEqual([
    '3.000000',
    '1.800000',
    '4.200000',
  ])
})

test('drops are counted out whole', () => {
  expect(dropsFor(millilitres(1))).toBe(20)
  expect(dropsFor(millilitres(0.12))).toBe(2)
})
