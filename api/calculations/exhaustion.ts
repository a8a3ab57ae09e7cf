import { z } from '#api/contract/schema.ts'
import { exhaustion as exhaustionOf } from '#api/science/bath/exhaustion.ts'
import { calculation, unavailable, workings } from './calculation.ts'

const dilution = z.number().min(1, 'A dilution is 1 or more: 10 for one part made up to ten.').optional()

/** Share of the dye that the yarn has taken: `POST /api/calculations/exhaustion`. */
export const exhaustion = calculation({
  name: 'exhaustion',
  summary: 'Share of the dye that the yarn has taken, from the absorbance of the bath before and after',
  request: z.object({
    absorbanceStart: z.number().gt(0),
    absorbanceEnd: z.number().min(0),
    dilutionStart: dilution,
    dilutionEnd: dilution,
    volumeStart: z.number().gt(0),
    volumeEnd: z.number().gt(0),
  }),
  reply: z.object({ exhaustionPercent: z.union([z.number(), unavailable]), ...workings }),
  compute: (it) => {
    const start = { absorbance: it.absorbanceStart, dilution: it.dilutionStart ?? 1, volume: it.volumeStart }
    const end = { absorbance: it.absorbanceEnd, dilution: it.dilutionEnd ?? 1, volume: it.volumeEnd }
    const cautions: string[] = []
    const counted = start.absorbance * start.dilution * start.volume
    const percent = counted > 0 && Number.isFinite(counted) ? exhaustionOf(start, end) : Number.NaN
    if (percent < 0)
      cautions.push('More dye is left than there was: look at the blank, the dilutions and the volumes.')
    if (start.absorbance > 1 || end.absorbance > 1)
      cautions.push(
        'Above an absorbance of about 1 it no longer goes with the amount of dye: dilute and measure again.',
      )
    if (start.absorbance < 0.1)
      cautions.push(
        'The absorbance at the start is below 0.1, where a small slip is a large share: dilute less.',
      )
    return {
      exhaustionPercent: Number.isFinite(percent)
        ? percent
        : { unavailable: 'These figures are too large or too small to set against each other.' },
      method:
        'E % = 100 × (1 − A·dilution·volume at the end ÷ A·dilution·volume at the start); one wavelength, one cell, blank subtracted.',
      cautions,
    }
  },
})
