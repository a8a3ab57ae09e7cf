import { type Celsius, celsius, type Metres } from '#api/science/units.ts'

/**
 * Where water boils at an altitude, and so how hot an open pot or steam can get: 1 °C less for each 300 m.
 *
 * A rule of thumb, within 0.4 °C of the tables up to 3000 m.
 *
 * @example
 * boilingPoint(1500) // 95
 */
export function boilingPoint(altitude: Metres): Celsius {
  return celsius(100 - altitude / 300)
}
