import { z } from '#api/contract/schema.ts'
import { cie76All } from '#api/science/colour/cie76.ts'
import { cie94All } from '#api/science/colour/cie94.ts'
import { ciede2000All } from '#api/science/colour/ciede2000-all.ts'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { cmcAll } from '#api/science/colour/cmc.ts'
import { directions } from '#api/science/colour/direction-in-words.ts'
import { hue } from '#api/science/colour/lab.ts'
import { labTriples } from '#api/science/colour/lab-triples.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { areLabPairs, isObject, labPairs, refuseLongPairs } from './lab-pairs.ts'

const cmcWeights = z.object({ l: z.number().gt(0), c: z.number().gt(0) })
const cie94Use = z.enum(['textiles', 'graphic'])

const request = z.object({
  pairs: labPairs,
  cmc: cmcWeights.default({ l: 2, c: 1 }),
  cie94: cie94Use.default('textiles'),
})
type Request = z.output<typeof request>

/** How each sample differs from its reference, by every usual formula: `POST /api/calculations/colour-difference`. */
export const colourDifference = calculation({
  name: 'colour-difference',
  summary: 'How samples differ from their references: ΔE76, ΔE94, CMC, ΔE00, their parts, and words',
  request,
  reply: z.object({
    results: z.array(
      z.object({
        dL: z.number(),
        da: z.number(),
        db: z.number(),
        dC: z.number(),
        dH: z.number(),
        hReference: z.number(),
        hSample: z.number(),
        dE76: z.number(),
        dE94: z.number(),
        dECmc: z.union([z.number(), unavailable]),
        dE00: z.number(),
        words: z.array(z.string()),
      }),
    ),
    ...workings,
  }),
  quick,
  compute: ({ pairs, cmc, cie94 }) => {
    const reference = labTriples(pairs.map((pair) => pair.reference))
    const sample = labTriples(pairs.map((pair) => pair.sample))
    const dE76 = cie76All(reference, sample)
    const dE94 = cie94All(reference, sample, { use: cie94 })
    const dECmc = cmcAll(reference, sample, cmc)
    const dE00 = ciede2000All(reference, sample)
    const results = pairs.map((pair, i) => {
      const { dL, da, db, dC, dH } = cielabDifference(pair.reference, pair.sample)
      return {
        dL,
        da,
        db,
        dC,
        dH,
        hReference: hue(pair.reference),
        hSample: hue(pair.sample),
        dE76: dE76[i]!,
        dE94: dE94[i]!,
        dECmc: finite(dECmc[i]!),
        dE00: dE00[i]!,
        words: directions(pair.reference, pair.sample),
      }
    })
    return {
      results,
      method: `Sample minus reference. ΔE76 (ISO/CIE 11664-4), ΔE94 for ${cie94 === 'textiles' ? 'textiles' : 'graphic arts'} (CIE 116), CMC(${cmc.l}:${cmc.c}) (ISO 105-J03), ΔE00 (ISO/CIE 11664-6). CIE94 and CMC take the weights of the reference. A word stands for a part of 0.5 or more in ΔL*, ΔC* or ΔH*, near grey in Δa* or Δb*.`,
      cautions: [],
    }
  },
})

function quick(body: unknown): Request | undefined {
  if (isObject(body) && areLabPairs(body.pairs)) {
    const cmc = cmcWeights.optional().safeParse(body.cmc)
    const cie94 = cie94Use.optional().safeParse(body.cie94)
    if (cmc.success && cie94.success)
      return { pairs: body.pairs, cmc: cmc.data ?? { l: 2, c: 1 }, cie94: cie94.data ?? 'textiles' }
  }
  refuseLongPairs(body)
  return undefined
}

function finite(value: number) {
  return Number.isFinite(value) ? value : { unavailable: 'The weights l and c are too small to divide by.' }
}
