/**
 * A temperature for people: °C, and °F beside it, whole.
 *
 * @example
 * [degrees(40), degrees(-5)] // ['40 °C (104 °F)', '−5 °C (23 °F)']
 */
export function degrees(celsius: number): string {
  return `${signed(celsius)} °C (${fahrenheit(celsius)} °F)`
}

/**
 * A span of temperatures for people.
 *
 * @example
 * [degreesBetween(20, 25), degreesBetween(40, 40)] // ['20–25 °C (68–77 °F)', '40 °C (104 °F)']
 */
export function degreesBetween(low: number, high: number): string {
  if (low === high) return degrees(low)
  return `${signed(low)}–${signed(high)} °C (${fahrenheit(low)}–${fahrenheit(high)} °F)`
}

/** °F = °C × 9 ÷ 5 + 32, exactly by definition; whole, as a kitchen thermometer is read. */
function fahrenheit(celsius: number): string {
  return signed(Math.round(celsius * 1.8 + 32))
}

const signed = (value: number): string => String(Number(value.toPrecision(12))).replace('-', '−')
