import { bounds, isVariable } from '#api/contract/bounds.ts'
import type { VesselSeen } from '#db/trial-record.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'

export type FactorWords = {
  /** The factor as a sentence begins with it: “Steam time”. */
  readonly label: string
  /** Inside a sentence: “steam time”; a person’s own words as they were written. */
  readonly inSentence: string
  /** What a level is that does not do: “too short” of times, else “not enough”. */
  readonly enough: string
  /** In a headline: “35 minutes of steam”. */
  readonly level: (level: LevelRow) => string
  /** Elsewhere: “35 minutes”. */
  readonly short: (level: LevelRow) => string
  /** On an axis and in tables: “35 min”. */
  readonly tick: (level: LevelRow) => string
  /** The vessel at the factor’s stage. */
  readonly vessel: { readonly one: string; readonly many: string }
}

const units: Record<string, { one: string; many: string }> = {
  min: { one: 'minute', many: 'minutes' },
  h: { one: 'hour', many: 'hours' },
  d: { one: 'day', many: 'days' },
}

const timeUnits: ReadonlySet<string> = new Set(['min', 'h', 'd', 's'])

// What a level is a level of, in a headline; other factors are named as “75 W (Microwave power)”.
const headlines: Record<string, (amount: string) => string> = {
  steamTime: (amount) => `${amount} of steam`,
  hold: (amount) => `${amount} of holding`,
  coolDown: (amount) => `${amount} of cooling`,
  preSoak: (amount) => `${amount} of soaking`,
  acid: (amount) => `${amount.replace(' mL per 100 g', ' mL')} of vinegar per 100 g`,
  citric: (amount) => `${amount} of citric acid`,
}

type Kind = VesselSeen['kind']
const usualKind: Partial<Record<string, Kind>> = {
  set: 'packet',
  dye: 'pot',
  wash: 'jar',
  remedy: 'jar',
  light: 'card',
  rinse: 'bowl',
}

/** How the levels of a factor are said, and the vessels of its stage: by what they are, where they are all of one kind. */
export function wordsOfFactor(factor: FactorWithLevels, vessels: readonly VesselSeen[] = []): FactorWords {
  const kinds = new Set(vessels.filter(({ stage }) => stage === factor.stage).map(({ kind }) => kind))
  const kind = kinds.size === 1 ? [...kinds][0] : usualKind[factor.stage]
  const label = isVariable(factor.key) ? bounds[factor.key].label : capital(factor.key)
  // A person’s own words keep their capitals.
  const inSentence = isVariable(factor.key) ? label.charAt(0).toLowerCase() + label.slice(1) : factor.key
  const unit = factor.unit ?? ''
  const short = (level: LevelRow): string => {
    if (factor.kind === 'category' || level.value === null) return level.label
    const long = units[unit]
    if (long) return `${figure(level.value)} ${level.value === 1 ? long.one : long.many}`
    return unit ? `${figure(level.value)} ${unit}` : figure(level.value)
  }
  return {
    label,
    inSentence,
    enough: timeUnits.has(unit) ? 'too short' : 'not enough',
    short,
    level: (level) => {
      if (factor.kind === 'category' || level.value === null) return level.label
      return headlines[factor.key]?.(short(level)) ?? `${short(level)} (${inSentence})`
    },
    tick: (level) =>
      level.value === null || factor.kind === 'category'
        ? level.label
        : `${figure(level.value)}${unit ? ` ${unit}` : ''}`,
    vessel: { one: kind ?? 'vessel', many: `${kind ?? 'vessel'}s` },
  }
}

const figure = (value: number) => String(value).replace('-', '−')
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

/**
 * A level of another factor as a sentence begins with it: “On silk”, “At 20 minutes of soaking”, “With stirring”. A person’s
 * own words keep their capitals.
 */
export function spokenOf({
  factor,
  level,
}: {
  readonly factor: FactorWithLevels
  readonly level: LevelRow
}): string {
  if (factor.key === 'base') return `On ${level.label}`
  const words = wordsOfFactor(factor).level(level)
  return factor.kind === 'number' && level.value !== null ? `At ${words}` : `With ${words}`
}
