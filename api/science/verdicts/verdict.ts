/** The three answers that the tool gives, and no others. */
export type Verdict = 'holds' | 'does-not-hold' | 'not-settled'

const words: Readonly<Record<Verdict, string>> = {
  holds: 'holds',
  'does-not-hold': 'does not hold',
  'not-settled': 'not settled',
}

/**
 * A verdict as it stands in a sentence.
 *
 * @example
 * verdictInWords('does-not-hold') // 'does not hold'
 */
export function verdictInWords(verdict: Verdict): string {
  return words[verdict]
}
