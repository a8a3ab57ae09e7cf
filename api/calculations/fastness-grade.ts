import { z } from '#api/contract/schema.ts'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { changeGrade } from '#api/science/fastness/change-grade.ts'
import { grades } from '#api/science/fastness/grades.ts'
import { stainingGrade } from '#api/science/fastness/staining-grade.ts'
import { calculation, workings } from './calculation.ts'
import { areLabPairs, isObject, labPairs, refuseLongPairs } from './lab-pairs.ts'

const scale = z.enum(['change', 'staining'])

const methods = {
  change:
    'Grey-scale rating for change in colour calculated from CIELAB (A05 formula): difference is ΔE_F; the grade goes by its bands, which are not the nearest half of the rating.',
  staining:
    'Grey-scale rating for staining calculated from CIELAB (A04 formula): difference is ΔE_GS; the grade goes by bands of the rating rounded to two decimals.',
}

/** The grey-scale grade of changes in colour or of staining: `POST /api/calculations/fastness-grade`. */
export const fastnessGrade = calculation({
  name: 'fastness-grade',
  summary: 'Grey-scale grades for change in colour or staining, from L*a*b*',
  request: z.object({ pairs: labPairs, scale }),
  reply: z.object({
    results: z.array(
      z.object({ dE76: z.number(), difference: z.number(), rating: z.number(), grade: z.enum(grades) }),
    ),
    ...workings,
  }),
  quick: (body) => {
    if (isObject(body) && areLabPairs(body.pairs)) {
      const chosen = scale.safeParse(body.scale)
      if (chosen.success) return { pairs: body.pairs, scale: chosen.data }
    }
    refuseLongPairs(body)
    return undefined
  },
  compute: ({ pairs, scale }) => {
    const gradeOf = scale === 'change' ? changeGrade : stainingGrade
    return {
      results: pairs.map(({ reference, sample }) => ({
        dE76: cielabDifference(reference, sample).dE76,
        ...gradeOf(reference, sample),
      })),
      method: methods[scale],
      cautions: [],
    }
  },
})
