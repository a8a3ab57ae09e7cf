import { doubtOf, refusalOf, type VariableKey } from '#api/contract/bounds.ts'
import { z } from '#api/contract/schema.ts'
import { dyeWeight } from '#api/science/recipe/dye-weight.ts'
import { bathVolume } from '#api/science/recipe/liquor.ts'
import { stockVolume } from '#api/science/recipe/stock-volume.ts'
import { weighingError } from '#api/science/recipe/weighing-error.ts'
import { grams, millilitresPerGram, percentInVolume, percentOnFibre } from '#api/science/units.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { measured, refuseAt, weightOf } from './measured.ts'

/** A number within the bounds of a variable, refused in the words of the table. */
const within = (key: VariableKey) =>
  z.number().superRefine((value, ctx) => {
    const message = refusalOf(key, value)
    if (message) ctx.addIssue({ code: 'custom', message })
  })

/** Dye, stock and bath for a weight of fibre: `POST /api/calculations/amounts`. */
export const amounts = calculation({
  name: 'amounts',
  summary: 'Dye, stock and bath for a weight of fibre, and how far the weighing may be off',
  request: z.object({
    fibre: measured,
    depthPercent: within('depth'),
    stockPercent: within('stockStrength').optional(),
    liquorRatio: within('liquorRatio').optional(),
    scaleStepGrams: z.number().gt(0).max(1000).optional(),
  }),
  reply: z.object({
    dyeGrams: z.number(),
    stockMl: z.number().optional(),
    bathMl: z.number().optional(),
    weighingErrorPercent: z.union([z.number(), unavailable]).optional(),
    ...workings,
  }),
  compute: ({ fibre, depthPercent, stockPercent, liquorRatio, scaleStepGrams }) => {
    const weight = weightOf(fibre, ['fibre'])
    const refused = refusalOf('fibreMass', weight)
    if (refused) refuseAt(['fibre', 'amount'], refused)
    const depth = percentOnFibre(depthPercent)
    const dyeGrams = dyeWeight(weight, depth)
    const step = scaleStepGrams
    const cautions = [doubtOf('fibreMass', weight), doubtOf('depth', depthPercent)].filter(
      (it) => it !== undefined,
    )
    if (step !== undefined && dyeGrams > 0 && dyeGrams < 5 * step)
      cautions.push(
        'This is less than 5 steps of the scale. Take it from a stock, or weigh for more yarn at once.',
      )
    return {
      dyeGrams,
      ...(stockPercent === undefined
        ? {}
        : { stockMl: stockVolume(weight, depth, percentInVolume(stockPercent)) }),
      ...(liquorRatio === undefined ? {} : { bathMl: bathVolume(weight, millilitresPerGram(liquorRatio)) }),
      ...(step === undefined ? {} : { weighingErrorPercent: errorOf(dyeGrams, step) }),
      method:
        'Dye g = fibre × depth ÷ 100; stock mL = fibre × depth ÷ stock %; bath mL = fibre × liquor ratio; weighing error ± half a step of the scale.',
      cautions,
    }
  },
})

function errorOf(dye: number, step: number): number | { unavailable: string } {
  const error = dye > 0 ? weighingError(grams(dye), step) : Number.NaN
  return Number.isFinite(error)
    ? error
    : { unavailable: 'There is no dye to weigh, so it has no weighing error.' }
}
