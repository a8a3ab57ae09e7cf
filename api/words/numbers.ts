/**
 * A number as it stands in a sentence: so many places, a true minus, and no "−0.00".
 *
 * @example
 * [figure(-0.467), figure(-0.001), figure(1, 1)] // ['−0.47', '0.00', '1.0']
 */
export function figure(value: number, places = 2): string {
  const text = Math.abs(value).toFixed(places)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}

/**
 * A count with its noun.
 *
 * @example
 * [counted(1, { one: 'skein', many: 'skeins' }), counted(8, { one: 'skein', many: 'skeins' })] // ['1 skein', '8 skeins']
 */
export function counted(n: number, noun: { readonly one: string; readonly many: string }): string {
  return `${n} ${n === 1 ? noun.one : noun.many}`
}

/**
 * Things in a row, as in speech.
 *
 * @example
 * listed(['staining', 'rinses', 'felting']) // 'staining, rinses and felting'
 */
export function listed(things: readonly string[]): string {
  if (things.length < 2) return things[0] ?? ''
  return `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`
}

/**
 * A share as a percentage, with a no-break space and no more places than it needs.
 *
 * @example
 * [percent(0.9), percent(0.975)] // ['90\u00a0%', '97.5\u00a0%']
 */
export function percent(share: number): string {
  return `${Number((share * 100).toFixed(2))}\u00a0%`
}

/**
 * A margin keeps one place at least, so that it is seen to be a measured amount.
 *
 * @example
 * [margin(1), margin(1.25)] // ['1.0', '1.25']
 */
export function margin(value: number): string {
  return Number(value.toFixed(1)) === value ? value.toFixed(1) : String(Number(value.toPrecision(4)))
}

/**
 * The first letter large, as a sentence begins.
 *
 * @example
 * sentenceCase('all at start') // 'All at start'
 */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
