import { letterWidths } from './letter-widths.ts'

const widths = new Map<string, readonly [number, number]>(
  letterWidths.flatMap(([plain, strong, letters]) =>
    [...letters].map((letter) => [letter, [plain, strong]] as const),
  ),
)
/** A letter that is not in the table is taken as wide as an n. */
const usual = [531, 540] as const

/**
 * How wide words run in Ysabeau Office, in the unit of `size`, kerning left out (it takes a hundredth or two).
 *
 * @param strong Weight 700 instead of 500.
 *
 * @example
 * textWidth('35', { size: 100 }) // 103
 */
export function textWidth(
  words: string,
  { size, strong = false }: { size: number; strong?: boolean },
): number {
  let thousandths = 0
  for (const letter of words) thousandths += (widths.get(letter) ?? usual)[strong ? 1 : 0]
  return (thousandths * size) / 1000
}
