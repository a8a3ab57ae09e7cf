/**
 * Visible light, in megalux hours, from a sill of this brightness. An aid only: a result is always read against
 * blue wools on the same card, never against days.
 *
 * @throws RangeError for anything negative, or more than 24 hours a day
 *
 * @example
 * megaluxHours({ lux: 12000, hoursADay: 6, days: 30 }) // 2.16
 */
export function megaluxHours(light: { lux: number; hoursADay: number; days: number }): number {
  const { lux, hoursADay, days } = light
  if (!(lux >= 0 && days >= 0 && hoursADay >= 0 && hoursADay <= 24))
    throw new RangeError('Light is 0 lux or more, on 0 days or more, for 0–24 hours a day.')
  return (lux * hoursADay * days) / 1e6
}

/**
 * Megalux hours to a just noticeable change of blue wools 1–8, in light through a window and with its ultraviolet
 * taken out. Rounded, an order of magnitude: a factor of two either way.
 *
 * Source: CIE 157:2004 as it is quoted by conservation institutes; from memory.
 */
export const megaluxHoursToFirstFade = {
  window: [0.2, 0.6, 1.5, 3.5, 8, 20, 50, 120],
  withoutUltraviolet: [0.3, 1, 3, 10, 30, 100, 300, 1000],
} as const
