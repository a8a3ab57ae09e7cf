import { z } from '#api/contract/schema.ts'
import { measured } from './measured.ts'

const acidAdded = measured.extend({
  kind: z.enum(['acetic', 'citric', 'citric-monohydrate']),
  strengthPercent: z.number().gt(0).max(100).optional(),
})

/** One acid that was put into the bath. */
export type AcidAdded = z.output<typeof acidAdded>

/** More than a litre of the pure acid holds. */
export const mostMolPerL = 20

const concentration = z.number().min(0).max(mostMolPerL)

/** Amounts as they were measured out, or concentrations as they are known; which of the two is seen in the body. */
export const acidRequest = z.object({
  acids: z.array(acidAdded).max(100).optional(),
  bath: measured.optional(),
  alkalinity: z.number().min(0).max(1500).optional(),
  fibre: measured.optional(),
  acidsMolPerL: z.object({ acetic: concentration.optional(), citric: concentration.optional() }).optional(),
  // 1500 mg/L of calcium carbonate, in moles of acid that it takes up.
  alkalinityMolPerL: z.number().min(0).max(0.03).optional(),
})

export type AcidRequest = z.output<typeof acidRequest>
