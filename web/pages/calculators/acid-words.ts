import type { CitricKind } from '#api/science/bath/acid-swap.ts'
import type { StartPh } from '#api/science/bath/start-ph.ts'
import { inFigures } from '#web/form/measured.ts'
import { figure } from '#web/form/number-words.ts'

export type Acid = 'acetic' | CitricKind

export const acids = [
  { value: 'acetic', words: 'Vinegar' },
  { value: 'citric', words: 'Citric acid, anhydrous' },
  { value: 'citric-monohydrate', words: 'Citric acid, monohydrate' },
] as const satisfies readonly { readonly value: Acid; readonly words: string }[]

/** Cold and heated are said apart from this difference on. */
const apart = 0.3

/**
 * A start pH as it is said: one figure, or two where the water's carbonate makes them differ.
 *
 * @example
 * phInWords({ cold: 4.29, heated: 4.27, notAcid: false }) // { figure: 'About 4.3', words: '' }
 * @example
 * phInWords({ cold: 6.3, heated: 11.2, notAcid: true }) // { figure: 'About 6.3 cold, not acid when hot', words: 'Dye is taken up hot: count this bath as not acid.' }
 */
export function phInWords({ cold, heated, notAcid }: StartPh): { figure: string; words: string } {
  if (notAcid && cold >= 7) return { figure: 'Not acid', words: '' }
  if (notAcid)
    return {
      figure: `About ${figure(cold, 1)} cold, not acid when hot`,
      words: 'Dye is taken up hot: count this bath as not acid.',
    }
  if (Math.abs(heated - cold) <= apart) return { figure: `About ${figure(cold, 1)}`, words: '' }
  return {
    figure: `About ${figure(cold, 1)} cold, ${figure(heated, 1)} heated`,
    words: 'The acid hardly exceeds the water: look at both, and at a strip.',
  }
}

/**
 * How much acid that is for the yarn and in the bath.
 *
 * @example
 * amountsInWords({ per100g: 52.16, perLitre: 17.4, asFive: false }) // '52.2 mL for each 100 g of yarn, 17.4 mL in a litre.'
 */
export function amountsInWords({
  per100g,
  perLitre,
  asFive,
}: {
  readonly per100g: number | undefined
  readonly perLitre: number
  /** Something else was measured out than vinegar of 5 %. */
  readonly asFive: boolean
}): string {
  const forYarn = per100g === undefined ? '' : `${inFigures(per100g)} mL for each 100 g of yarn, `
  return `${forYarn}${inFigures(perLitre)} mL in a litre${asFive ? ', counted as vinegar of 5 %' : ''}.`
}
