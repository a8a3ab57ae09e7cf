import { counted, listed, sentenceCase } from '#api/words/numbers.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import type { LevelCompared } from './judged-difference.ts'
import { levelName } from './level-name.ts'
import { type Because, fewestBlocks } from './no-worse-verdict.ts'

/** Why a comparison is not settled where no limit decided, as a sentence. */
export function whyOpen(
  because: Because,
  it: LevelCompared,
  factor: Pick<FactorWithLevels, 'kind' | 'unit'>,
): string {
  const [level, reference] = [levelName(it.level, factor), levelName(it.reference, factor)]
  const { compared, units, vessels, single, blank, pooled } = it
  const { n, unavailable } = compared.raw
  if (because === 'no pair')
    return pooled
      ? `${level} or ${reference} has no result yet.`
      : `No ${units.one} has results of both ${level} and ${reference}.`
  if (because === 'one unit')
    return `${listed(single.map((one) => levelName(one, factor)))} had one ${vessels.one} in the whole trial, so nothing can be claimed.`
  if (because === 'few blocks')
    return pooled
      ? `${level} has ${counted(n, units)}; it takes ${fewestBlocks}.`
      : `${sentenceCase(counted(n, units))} ${n === 1 ? 'has' : 'have'} both ${level} and ${reference}; it takes ${fewestBlocks}.`
  if (because === 'blank')
    return `${counted(blank, { one: 'skein', many: 'skeins' })} of ${level} or ${reference} ${blank === 1 ? 'has' : 'have'} no result: read ${blank === 1 ? 'it' : 'them'}, or enter why ${blank === 1 ? 'it was' : 'they were'} lost.`
  if (because === 'noise') return it.stop ?? ''
  return unavailable ?? 'The spread is too little known to set limits by.'
}
