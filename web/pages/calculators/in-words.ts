import { inFigures } from '#web/form/measured.ts'

/**
 * A volume as one measures it out: from a litre on in litres.
 *
 * @example
 * asVolume(10206) // { amount: '10.2', unit: 'L' }
 */
export function asVolume(millilitres: number): { amount: string; unit: string } {
  return millilitres >= 1000
    ? { amount: inFigures(millilitres / 1000), unit: 'L' }
    : { amount: inFigures(millilitres), unit: 'mL' }
}

/** Suppliers' guidance for depths on wool, in per cent of the dry yarn. */
const shades = [
  { upTo: 0.1, words: 'a tint: below 0.1 %' },
  { upTo: 0.5, words: 'a pale shade: 0.1–0.5 %' },
  { upTo: 1.5, words: 'a mid shade: 0.5–1.5 %' },
  { upTo: 3, words: 'a deep shade: 1.5–3 %' },
  { upTo: 5, words: 'black or navy: 3–5 %' },
] as const

/**
 * What a depth of shade looks like, by suppliers' guidance.
 *
 * @example
 * shadeOf(1) // 'a mid shade: 0.5–1.5 %'
 */
export function shadeOf(depth: number): string {
  if (depth === 0) return 'no dye: a control'
  return shades.find(({ upTo }) => depth < upTo)?.words ?? 'deeper than black needs'
}

/**
 * A strength of stock in things one can weigh.
 *
 * @example
 * stockInWords(0.5) // '0.5 g in 100 mL'
 */
export function stockInWords(percent: number): string {
  return `${inFigures(percent)} g in 100 mL`
}

/**
 * Numbers pasted together into one box, as an instrument or a spreadsheet gives them: L*, a* and b*.
 * Undefined when the text is not three numbers.
 *
 * @example
 * threeOf('52,1; 3,2; −8,0') // ['52,1', '3,2', '−8,0']
 * @example
 * threeOf('52.1, 3.2, -8.0') // ['52.1', '3.2', '-8.0']
 */
export function threeOf(text: string): readonly [string, string, string] | undefined {
  const byGaps = text.split(/[\s;]+/).filter((part) => part !== '')
  // Commas part numbers only where points are the decimals.
  const parts = byGaps.length === 1 && text.includes('.') ? text.split(',') : byGaps
  const [one, two, three, ...more] = parts.map((part) => part.trim().replace(/,$/, ''))
  if (one === undefined || two === undefined || three === undefined || more.length > 0) return undefined
  return [one, two, three].every((part) => /^[+\-−]?\d+(?:[.,]\d+)?$/.test(part))
    ? [one, two, three]
    : undefined
}
