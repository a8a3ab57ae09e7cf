import { expect, test } from 'vitest'
import { leftAfterRinses, rinseFall } from '#api/science/bath/rinse-dilution.ts'
import { millilitresPerGram } from '#api/science/units.ts'

test('squeezed yarn in 20 mL/g leaves 5.7 %, 0.32 %, 0.018 %', () => {
  // By hand: 1.2 ÷ 21.2 = 0.0566; its square 0.003204; its cube 0.000181.
  const fall = rinseFall(3, 1.2, millilitresPerGram(20)).map((share) => share * 100)
  expect(fall[0]).toBe(100)
  expect(fall[1]).toBeCloseTo(5.7, 1)
  expect(fall[2]).toBeCloseTo(0.32, 2)
  expect(fall[3]).toBeCloseTo(0.018, 3)
})

test('spun yarn clears faster than squeezed', () => {
  expect(leftAfterRinses(2, 0.5, millilitresPerGram(20))).toBeLessThan(
    leftAfterRinses(2, 1.2, millilitresPerGram(20)),
  )
})

test('rinsing without water is refused', () => {
  expect(() => leftAfterRinses(1, 0, millilitresPerGram(0))).toThrow(RangeError)
})
