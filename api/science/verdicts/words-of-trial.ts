import type { Level } from './level-rows.ts'
import type { Counted, TrialWords } from './trial-verdict.ts'

/**
 * A level in the short form: "35 minutes".
 *
 * @example
 * shortOf({ level: (level) => `${level} minutes of steam`, short: (level) => `${level} minutes` }, 35) // '35 minutes'
 */
export function shortOf(words: TrialWords, level: Level): string {
  return (words.short ?? words.level)(level)
}

/**
 * What a block is called; "session" unless the caller says "bench" or "skein".
 *
 * @example
 * blockWords({ level: String }).many // 'sessions'
 */
export function blockWords(words: TrialWords): Counted {
  return words.block ?? { one: 'session', many: 'sessions' }
}

/**
 * What a vessel is called; "vessel" unless the caller says "packet" or "jar".
 *
 * @example
 * vesselWords({ level: String, vessel: { one: 'packet', many: 'packets' } }).one // 'packet'
 */
export function vesselWords(words: TrialWords): Counted {
  return words.vessel ?? { one: 'vessel', many: 'vessels' }
}

/**
 * The outcome that is judged; "extra loss" unless the caller says otherwise.
 *
 * @example
 * outcomeOf({ level: String }) // 'extra loss'
 */
export function outcomeOf(words: TrialWords): string {
  return words.outcome ?? 'extra loss'
}

/**
 * The unit of the outcome; ΔE00 unless the caller says otherwise.
 *
 * @example
 * unitWords({ level: String, unit: 'L*' }) // 'L*'
 */
export function unitWords(words: TrialWords): string {
  return words.unit ?? 'ΔE00'
}

/**
 * What a side result is called.
 *
 * @example
 * sideLabel({ level: String, sides: { felt: { label: 'felting' } } }, 'felt') // 'felting'
 */
export function sideLabel(words: TrialWords, side: string): string {
  return words.sides?.[side]?.label ?? side
}

/**
 * A side result as it is written: grade 3.5 as "3-4" where the caller says how.
 *
 * @example
 * sideValue({ level: String, sides: { felt: { label: 'felting' } } }, 'felt', 2) // '2'
 */
export function sideValue(words: TrialWords, side: string, value: number): string {
  return words.sides?.[side]?.value?.(value) ?? String(value)
}
