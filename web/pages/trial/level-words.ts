import type { Factor } from '#api/contract/trial.ts'
import { withUnit } from '#web/form/number-words.ts'

type Level = Factor['levels'][number]

/**
 * A level as it stands over its column: “35 min”.
 *
 * @example
 * levelWords({ kind: 'number', unit: 'min' }, { label: '35' }).replace('\u00a0', ' ') // '35 min'
 */
export function levelWords(factor: Pick<Factor, 'kind' | 'unit'>, { label }: Pick<Level, 'label'>): string {
  if (factor.kind === 'category' || !/\d$/.test(label)) return label
  return withUnit(label, factor.unit ?? '')
}

/** The level that the others are held against: the one marked, else the last. */
export function referenceOf(factor: Factor): Level | undefined {
  return factor.levels.find(({ isReference }) => isReference) ?? factor.levels.at(-1)
}

/** The first level to be tried against the reference: the one next to it. */
export function firstTried(factor: Factor): Level | undefined {
  const reference = referenceOf(factor)
  const place = reference === undefined ? -1 : factor.levels.indexOf(reference)
  return factor.levels[place - 1] ?? factor.levels.find((level) => level !== reference)
}
