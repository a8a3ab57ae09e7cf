import { formatHex } from 'culori'
import { expect, test } from 'vitest'
import { isBeyondScreen, yarnBackground } from '#web/parts/yarn.ts'

// The hex of every colour as culori gives it.
const hex = (L: number, a: number, b: number): string => formatHex({ mode: 'lab65', l: L, a, b })

test('two colours abut in one background, half and half, with a hard stop between', () => {
  expect(
    yarnBackground([
      { L: 37, a: -15, b: -14 },
      { L: 57, a: -2, b: 6 },
    ]),
  ).toBe(`linear-gradient(90deg, ${hex(37, -15, -14)} 0% 50%, ${hex(57, -2, 6)} 50% 100%)`)
})

test('three share the width evenly', () => {
  expect(yarnBackground([1, 2, 3].map(() => ({ L: 50, a: 0, b: 0 })))).toContain('33.33% 66.67%')
})

test('a colour that a screen cannot show is known as such', () => {
  expect(isBeyondScreen({ L: 45, a: -5, b: -60 })).toBe(true)
  expect(isBeyondScreen({ L: 37, a: -15, b: -14 })).toBe(false)
})
