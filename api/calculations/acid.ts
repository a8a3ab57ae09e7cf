import { Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { startPh } from '#api/science/bath/start-ph.ts'
import { molesPerLitre } from '#api/science/units.ts'
import { type MeasuredBath, measuredBath } from './acid-measured.ts'
import { type AcidRequest, acidRequest } from './acid-request.ts'
import { calculation, workings } from './calculation.ts'

/** Acid in the bath and what the bath will read: `POST /api/calculations/acid`. */
export const acid = calculation({
  name: 'acid',
  summary: 'Acid in the bath, its pH cold and heated before the yarn goes in, and the vinegar for each 100 g',
  request: acidRequest,
  reply: z.object({
    molPerL: z.object({ acetic: z.number(), citric: z.number() }),
    pH: z.number(),
    pHHeated: z.number(),
    notAcid: z.boolean(),
    mLVinegar5Per100g: z.number().optional(),
    ...workings,
  }),
  compute: (body) => {
    const { acetic, citric, alkalinity, vinegarPer100g, cautions } = bathOf(body)
    const { cold, heated, notAcid } = startPh({ acetic, citric }, alkalinity)
    return {
      molPerL: { acetic, citric },
      pH: cold,
      pHHeated: heated,
      notAcid,
      ...(vinegarPer100g === undefined ? {} : { mLVinegar5Per100g: vinegarPer100g }),
      method:
        'Charge balance at 25 °C without salt; pKa acetic 4.757, citric 3.128, 4.761, 6.396, carbonic 6.352, 10.329, pKw 13.997 (NIST SRD 46). pH: with the carbonate of the water still in the bath; pHHeated: with its carbon dioxide driven off.',
      cautions: [...cautions, ...aboutPh(cold, heated, notAcid)],
    }
  },
})

function aboutPh(cold: number, heated: number, notAcid: boolean): string[] {
  const fibre = 'The fibre is not counted: the pH climbs 0.5 to 1.5 once the yarn is in.'
  if (notAcid) return [fibre, 'Not acid: heated, the water uses up all the acid there is. Add more.']
  if (Math.abs(heated - cold) <= 0.3) return [fibre]
  return [fibre, 'The acid hardly exceeds the alkalinity: look at both values, and at a strip of pH paper.']
}

/** The bath by whichever of the two ways the body gives it. */
function bathOf(body: AcidRequest): MeasuredBath {
  const { acids, bath, acidsMolPerL, alkalinityMolPerL } = body
  if (acidsMolPerL) {
    const doubled = (['acids', 'bath', 'alkalinity', 'fibre'] as const).filter(
      (key) => body[key] !== undefined,
    )
    if (doubled.length > 0) throw atFault(doubled, 'Give either amounts or acidsMolPerL, not both.')
    return {
      acetic: molesPerLitre(acidsMolPerL.acetic ?? 0),
      citric: molesPerLitre(acidsMolPerL.citric ?? 0),
      alkalinity: molesPerLitre(alkalinityMolPerL ?? 0),
      cautions: [],
    }
  }
  if (alkalinityMolPerL !== undefined)
    throw atFault(
      ['alkalinityMolPerL'],
      'This goes with acidsMolPerL; beside amounts give alkalinity, in mg/L.',
    )
  if (acids && bath) return measuredBath(acids, bath, body)
  const missing = (['acids', 'bath'] as const).filter((key) => body[key] === undefined)
  throw atFault(missing, 'This is missing.')
}

function atFault(keys: readonly string[], detail: string): Problem {
  const faults = keys.map((key) => ({ pointer: pointerTo([key]), detail }))
  return new Problem('at-fault', 'This cannot be worked out as it is.', faults)
}
