import type { FactorWithLevels, LevelRow } from '#db/trials.ts'

const longUnits: Readonly<Record<string, { one: string; many: string }>> = {
  min: { one: 'minute', many: 'minutes' },
  h: { one: 'hour', many: 'hours' },
  d: { one: 'day', many: 'days' },
}

/**
 * A level as it is named in a sentence: a number with its unit, or the person’s own words as they were written.
 *
 * @example
 * levelName({ label: '35', value: 35 }, { kind: 'number', unit: 'min' }) // '35 minutes'
 */
export function levelName(
  level: Pick<LevelRow, 'label' | 'value'>,
  factor: Pick<FactorWithLevels, 'kind' | 'unit'>,
): string {
  if (factor.kind === 'category' || level.value === null) return level.label
  const number = String(level.value).replace('-', '−')
  const long = longUnits[factor.unit ?? '']
  if (long) return `${number} ${level.value === 1 ? long.one : long.many}`
  return factor.unit ? `${number} ${factor.unit}` : number
}
