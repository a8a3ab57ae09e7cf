/** The one place where numbers are rounded: on their way to the screen. */

const minus = '\u2212'
const noBreak = '\u00a0'

/**
 * A number with a true minus, rounded to so many decimals; one that rounds to nothing has no sign.
 *
 * @example
 * figure(-0.4712, 2) // '−0.47'
 */
export function figure(value: number, decimals = 2): string {
  const text = Math.abs(value).toFixed(decimals)
  return value < 0 && Number(text) !== 0 ? minus + text : text
}

/**
 * A change, with its sign always said.
 *
 * @example
 * signed(7.31, 1) // '+7.3'
 */
export function signed(value: number, decimals = 1): string {
  const text = figure(value, decimals)
  return value > 0 && Number(text) !== 0 ? `+${text}` : text
}

/**
 * The two ends of an interval.
 *
 * @example
 * fromTo(-0.4712, 0.4999, 2) // '−0.47 to 0.50'
 */
export function fromTo(low: number, high: number, decimals = 2): string {
  return `${figure(low, decimals)} to ${figure(high, decimals)}`
}

/**
 * A share of one as per cent, with a space that does not break.
 *
 * @example
 * perCent(0.9).replace('\u00a0', ' ') // '90 %'
 */
export function perCent(share: number, decimals = 0): string {
  return withUnit(figure(share * 100, decimals), '%')
}

/**
 * A figure and its unit, kept on one line.
 *
 * @example
 * withUnit('35', 'min').replace('\u00a0', ' ') // '35 min'
 */
export function withUnit(text: string, unit: string): string {
  return unit === '' ? text : `${text}${noBreak}${unit}`
}

/**
 * How many, in digits, with the word in the singular or the plural.
 *
 * @example
 * counted(1, 'skein') // '1 skein'
 * @example
 * counted(20000, 'invented trial') // '20,000 invented trials'
 */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${grouped(count)} ${count === 1 ? one : many}`
}

/**
 * A whole number with its thousands set apart.
 *
 * @example
 * grouped(20000) // '20,000'
 */
export function grouped(count: number): string {
  return figure(count, 0).replace(/\B(?=(\d{3})+$)/g, ',')
}

/**
 * Things in a row, as one says them.
 *
 * @example
 * listed(['L*', 'a*', 'b*']) // 'L*, a* and b*'
 */
export function listed(things: readonly string[]): string {
  const last = things.at(-1) ?? ''
  return things.length < 2 ? last : `${things.slice(0, -1).join(', ')} and ${last}`
}
