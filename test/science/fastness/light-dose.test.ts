import { expect, test } from 'vitest'
import { megaluxHours, megaluxHoursToFirstFade } from '#api/science/fastness/light-dose.ts'
import reference from '#test/reference/colour/blue-wool.json' with { type: 'json' }

const { with_UV_daylight_through_glass, UV_filtered } = reference.visible_dose_Mlux_h_to_first_fade

test('12 000 lux for six hours a day over 30 days are 2.16 megalux hours', () => {
  const example = reference.arithmetic_examples.find(({ a_Mlux_h }) => a_Mlux_h !== undefined)
  expect(megaluxHours({ lux: 12000, hoursADay: 6, days: 30 })).toBeCloseTo(example!.a_Mlux_h!, 12)
})

// The file marks its table as from memory, good to a factor of two; ours is the same, rounded.
test('doses to a first fade are the quoted ones, within a tenth', () => {
  for (const [quoted, ours] of [
    [with_UV_daylight_through_glass, megaluxHoursToFirstFade.window],
    [UV_filtered, megaluxHoursToFirstFade.withoutUltraviolet],
  ] as const) {
    Object.values(quoted).forEach((dose, i) => {
      expect(Math.abs(ours[i]! / dose - 1)).toBeLessThanOrEqual(0.1)
    })
  }
})

// ISO 105-B01: each wool needs about twice the light of the one before, in museum practice two to three times.
test('each wool lasts two to three and a half times as long as the one before', () => {
  for (const doses of [megaluxHoursToFirstFade.window, megaluxHoursToFirstFade.withoutUltraviolet]) {
    for (let i = 1; i < doses.length; i++) {
      expect(doses[i]! / doses[i - 1]!).toBeGreaterThanOrEqual(2)
      expect(doses[i]! / doses[i - 1]!).toBeLessThanOrEqual(3.5)
    }
  }
})

test.each([
  { lux: -1, hoursADay: 6, days: 30 },
  { lux: 1, hoursADay: 25, days: 30 },
  { lux: 1, hoursADay: 6, days: Number.NaN },
])('%j is refused', (light) => {
  expect(() => megaluxHours(light)).toThrow(RangeError)
})
