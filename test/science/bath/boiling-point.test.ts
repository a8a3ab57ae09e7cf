import { expect, test } from 'vitest'
import { boilingPoint } from '#api/science/bath/boiling-point.ts'
import { metres } from '#api/science/units.ts'

/** Altitude at which the air has a pressure: International Standard Atmosphere (ISO 2533), below 11 km. */
const altitudeOf = (kilopascal: number) => 44_330.77 * (1 - (kilopascal / 101.325) ** 0.190263)

// Saturation temperature of water by pressure, kPa → °C: steam tables, from memory.
test.each([
  [100, 99.61],
  [75, 91.76],
  [50, 81.32],
])('where the air has %d kPa water boils at %d °C, to within half a degree', (pressure, boils) => {
  expect(Math.abs(boilingPoint(metres(altitudeOf(pressure))) - boils)).toBeLessThan(0.5)
})

test('below the sea it boils above 100 °C', () => {
  expect(boilingPoint(metres(-300))).toBe(101)
})
