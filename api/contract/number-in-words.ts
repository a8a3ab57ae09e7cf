import type { Counted } from './patterns.ts'

const words = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/**
 * A small number as a word, a larger one in figures.
 *
 * @example
 * [inWords(4), inWords(24)] // ['four', '24']
 */
export function inWords(count: number): string {
  return words[count] ?? String(count)
}

/**
 * So many of a thing, as a sentence begins with it.
 *
 * @example
 * fewInWords(3, { one: 'skein', many: 'skeins' }) // 'Three skeins'
 */
export function fewInWords(count: number, thing: Counted): string {
  const number = inWords(count)
  return `${number.charAt(0).toUpperCase()}${number.slice(1)} ${count === 1 ? thing.one : thing.many}`
}

/**
 * One of a thing: “a packet”, “an earlier lot”.
 *
 * @example
 * oneInWords({ one: 'packet', many: 'packets' }) // 'a packet'
 */
export function oneInWords({ one }: Counted): string {
  return `${/^[aeiou]/i.test(one) ? 'an' : 'a'} ${one}`
}
