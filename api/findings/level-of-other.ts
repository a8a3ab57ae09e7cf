import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import { wordsOfFactor } from './words-of-factor.ts'

/** A level of the factor that splits a trial, and the factor itself. */
export type LevelOfOther = { readonly factor: FactorWithLevels; readonly level: LevelRow }

/** The level that a finding speaks of, as a sentence begins with it: “On silk”, “At 20 minutes of soaking”. */
export function spokenOf({ factor, level }: LevelOfOther): string {
  if (factor.key === 'base') return `On ${level.label}`
  const words = wordsOfFactor(factor).level(level)
  return factor.kind === 'number' && level.value !== null ? `At ${words}` : `With ${words}`
}

// Our own first words only: a person’s own words keep their capitals.
const ours = /^(?:Not|None|No|Nothing|Neither)\b/

/** A headline that names the level it speaks of: “On silk, not settled: 2 of 3 sessions.” */
export function headlineOf(headline: string, other: LevelOfOther | undefined): string {
  if (!other) return headline
  return `${spokenOf(other)}, ${headline.replace(ours, (word) => word.toLowerCase())}`
}
