import {
  type Grams,
  grams,
  type Millilitres,
  type MillilitresPerGram,
  millilitres,
  type Percent,
  percent,
} from '#api/science/units.ts'
import { bathVolume } from './liquor.ts'
import { weighingError } from './weighing-error.ts'

export type RecipeLine = { readonly name: string; readonly per100g: number; readonly measure: 'g' | 'mL' }

export type RescaledLine = {
  readonly name: string
  readonly amount: number
  readonly measure: 'g' | 'mL'
  /** ± for being read to the nearest step of the tool; absent without a tool, or with nothing to measure. */
  readonly toolError?: Percent
}

export type PotFit = {
  /** Share of the pot that the bath fills. */
  readonly filled: Percent
  readonly fits: 'fits' | 'nearly full' | 'too small'
  /** Most dry fibre that this pot takes at this liquor ratio, three quarters full. */
  readonly mostFibre: Grams
}

export type Rescaled = {
  readonly lines: readonly RescaledLine[]
  readonly bath?: Millilitres
  readonly pot?: PotFit
  readonly cautions: readonly string[]
}

/** A pot filled further than this boils over, or leaves no room to turn the yarn. */
const fullEnough = 0.75

/**
 * A recipe for another weight of dry fibre: amounts and bath go up and down together, times and temperatures stay.
 *
 * Says whether the bath fits the pot and how far each amount may be off on this scale or measure.
 *
 * @param fibre    More than 0.
 * @param options  `liquorRatio` gives the bath; with `pot`, the volume to its rim, also the fit. `scaleStep` and
 *                 `measureStep` are the smallest steps of the scale and of the measure.
 *
 * @throws RangeError without fibre.
 *
 * @example
 * rescaleRecipe([{ name: 'Blue', per100g: 1.5, measure: 'g' }], 20, { scaleStep: 0.1 }).lines[0] // { name: 'Blue', amount: 0.3, toolError: 17 }
 */
export function rescaleRecipe(
  recipe: readonly RecipeLine[],
  fibre: Grams,
  options: {
    readonly liquorRatio?: MillilitresPerGram
    readonly pot?: Millilitres
    readonly scaleStep?: Grams
    readonly measureStep?: Millilitres
  } = {},
): Rescaled {
  if (!(fibre > 0)) throw new RangeError('a recipe is rescaled to more than 0 g of fibre')
  const { liquorRatio, pot, scaleStep, measureStep } = options
  const cautions: string[] = []
  const lines = recipe.map(({ name, per100g, measure }): RescaledLine => {
    const amount = (per100g * fibre) / 100
    const step = measure === 'g' ? scaleStep : measureStep
    if (step === undefined || amount <= 0) return { name, amount, measure }
    const toolError = weighingError(amount, step)
    if (amount < 5 * step) cautions.push(tooLittle(name, measure, step))
    return { name, amount, measure, toolError }
  })
  if (liquorRatio === undefined) return { lines, cautions }
  const bath = bathVolume(fibre, liquorRatio)
  if (pot === undefined) return { lines, bath, cautions }
  const fit = potFit(bath, pot, liquorRatio)
  if (fit.fits === 'too small') cautions.push('The bath does not go into this pot.')
  if (fit.fits === 'nearly full') cautions.push('The bath fills more than three quarters of this pot.')
  return { lines, bath, pot: fit, cautions }
}

/**
 * Whether a bath fits a pot: three quarters full at most.
 *
 * @param pot  Volume to its rim; more than 0.
 *
 * @example
 * potFit(7000, 8000, 30) // { filled: 87.5, fits: 'nearly full', mostFibre: 200 }
 */
export function potFit(bath: Millilitres, pot: Millilitres, ratio: MillilitresPerGram): PotFit {
  if (!(pot > 0) || !(ratio > 0)) throw new RangeError('a pot and a liquor ratio are more than 0')
  const share = bath / pot
  return {
    filled: percent(100 * share),
    fits: share > 1 ? 'too small' : share > fullEnough ? 'nearly full' : 'fits',
    mostFibre: grams(millilitres(fullEnough * pot) / ratio),
  }
}

function tooLittle(name: string, measure: 'g' | 'mL', step: number): string {
  return measure === 'g'
    ? `${name}: less than 5 steps of a ${step} g scale. Take it from a stock, or weigh for more yarn at once.`
    : `${name}: less than 5 steps of ${step} mL. Use a finer measure, or a weaker stock.`
}
