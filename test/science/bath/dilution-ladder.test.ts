import { expect, test } from 'vitest'
import { ladderSteps, leftByLadder } from '#api/science/bath/dilution-ladder.ts'

test('the glasses fall by halves, as near as they are written', () => {
  expect(ladderSteps).toEqual([100, 50, 25, 12.5, 6, 3, 1.5, 0])
})

test('6 % left is 94 % taken up, read to within a factor of 1.4', () => {
  const { exhaustion, least, most } = leftByLadder(6)
  expect(exhaustion).toBe(94)
  expect(least).toBeCloseTo(4.2857, 4)
  expect(most).toBeCloseTo(8.4, 10)
})

test('no glass holds more than the bath did, and clear is not nothing', () => {
  expect(leftByLadder(100).most).toBe(100)
  expect(leftByLadder(0)).toEqual({ left: 0, least: 0, most: 0.75, exhaustion: 100 })
})

test('what lies between two glasses is not a step', () => {
  expect(() => leftByLadder(7)).toThrow(RangeError)
})
