import { type Fault, Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { absorptionOverScattering } from '#api/science/colour/kubelka-munk.ts'
import { type SpectralWeights, spectralWeights } from '#api/science/colour/spectral-weights.ts'
import { spectrumToXyz } from '#api/science/colour/spectrum-to-lab.ts'
import { xyzToLab } from '#api/science/colour/xyz-to-lab.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'

/** 360 to 780 nm every 10 nm. */
const mostWavelengths = 43
const curve = z.array(z.number().min(0).max(1)).max(mostWavelengths)
const mostSpectra = 100_000

/** Colours and K/S of reflectance spectra: `POST /api/calculations/spectrum`. */
export const spectrum = calculation({
  name: 'spectrum',
  summary: 'XYZ, L*a*b* and K/S of reflectance spectra, 10 or 20 nm apart',
  request: z.object({
    wavelengths: z.array(z.number().min(360).max(780)).min(2).max(mostWavelengths),
    reflectance: z.array(curve).max(mostSpectra),
    illuminant: z.enum(['A', 'D50', 'D65']),
    observer: z.literal([2, 10]),
  }),
  reply: z.object({
    results: z.array(
      z.object({
        XYZ: z.array(z.number()).length(3),
        Lab: z.object({ L: z.number(), a: z.number(), b: z.number() }),
        ks: z.array(z.union([z.number(), unavailable])),
      }),
    ),
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    const spectra = Array.isArray(body.reflectance) ? body.reflectance : []
    // Each spectrum's own length comes first: one of millions of values is refused for it, not value by value.
    refuseLongLists([
      { path: ['wavelengths'], list: body.wavelengths, item: z.number(), most: mostWavelengths },
      ...spectra.map((list, i) => ({
        path: ['reflectance', i],
        list,
        item: z.number(),
        most: mostWavelengths,
      })),
      { path: ['reflectance'], list: body.reflectance, item: curve, most: mostSpectra },
    ])
    return undefined
  },
  compute: ({ wavelengths, reflectance, illuminant, observer }) => {
    const weights = weightsFor(wavelengths, { illuminant, observer })
    refuseUnequal(reflectance, wavelengths.length)
    return {
      results: reflectance.map((spectrum) => {
        const xyz = spectrumToXyz(spectrum, weights)
        return { XYZ: [...xyz], Lab: xyzToLab(xyz, weights.white), ks: spectrum.map(ksOf) }
      }),
      method: `ASTM E308 with weights by ASTM E2022, ${illuminant}, ${observer}°; wavelengths beyond the spectrum are folded into its first and last. ${wavelengths[1]! - wavelengths[0]! === 20 ? 'Spectra 20 nm apart are interpolated to 10 nm first. ' : ''}K/S by Kubelka and Munk.`,
      cautions: [],
    }
  },
})

function weightsFor(
  wavelengths: readonly number[],
  viewing: { illuminant: 'A' | 'D50' | 'D65'; observer: 2 | 10 },
): SpectralWeights {
  const step = wavelengths[1]! - wavelengths[0]!
  if (step !== 10 && step !== 20)
    throw refusal([fault(['wavelengths', 1], 'Wavelengths ascend in steps of 10 or 20 nm.')])
  const wrong = wavelengths.findIndex((nm, i) => i > 0 && nm - wavelengths[i - 1]! !== step)
  if (wrong > 0)
    throw refusal([fault(['wavelengths', wrong], `Wavelengths ascend in even steps, here ${step} nm.`)])
  return spectralWeights(wavelengths, viewing)
}

function refuseUnequal(reflectance: readonly (readonly number[])[], length: number): void {
  const faults = reflectance.flatMap((spectrum, i) =>
    spectrum.length === length
      ? []
      : [fault(['reflectance', i], `This has ${spectrum.length} values for ${length} wavelengths.`)],
  )
  if (faults.length > 0) throw refusal(faults.slice(0, 200))
}

function fault(path: readonly PropertyKey[], detail: string): Fault {
  return { pointer: pointerTo(path), detail }
}

function refusal(faults: readonly Fault[]): Problem {
  return new Problem('at-fault', 'This cannot be worked out as it is.', faults)
}

function ksOf(reflectance: number) {
  const ks = absorptionOverScattering(reflectance)
  return Number.isFinite(ks) ? ks : { unavailable: 'A reflectance of 0 has no K/S.' }
}
