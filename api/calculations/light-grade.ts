import { type Fault, Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { type LightRating, lightGradeText, lightRating } from '#api/science/fastness/light-rating.ts'
import { calculation, unavailable, workings } from './calculation.ts'

/** The change at which a first fade is seen: grey-scale grade 4. */
const firstFade = 1.7

/** Light fastness against blue wools on the same card: `POST /api/calculations/light-grade`. */
export const lightGrade = calculation({
  name: 'light-grade',
  summary: 'Light fastness of a colour, read between the blue wools exposed beside it',
  request: z.object({
    specimen: z.number().min(0),
    references: z
      .array(z.object({ number: z.number().int().min(1).max(8), dE: z.number().min(0) }))
      .min(2)
      .max(8),
  }),
  reply: z.object({
    rating: z.union([z.number(), unavailable]),
    grade: z.union([z.string(), unavailable]),
    bracket: z.union([z.array(z.number()).length(2), unavailable]),
    ...workings,
  }),
  compute: ({ specimen, references }) => {
    const faults = twice(references)
    if (faults.length > 0) throw new Problem('at-fault', 'Each blue wool stands once.', faults)
    const found = lightRating(specimen, references)
    return {
      ...inWords(found),
      method:
        'Interpolated on ln ΔE between the blue wools of the same card at the same date, to the nearest half step.',
      cautions: cautionsOf(specimen, found),
    }
  },
})

function inWords(found: LightRating) {
  if (found.kind === 'between')
    return { rating: found.rating, grade: lightGradeText(found.rating), bracket: [...found.bracket] }
  if (found.kind === 'no-wool') {
    const none = { unavailable: 'No blue wool on the card has changed yet.' }
    return { rating: none, grade: none, bracket: none }
  }
  const off = {
    unavailable:
      found.kind === 'below'
        ? `The colour changed more than wool ${found.number}, the weakest that still bounds it.`
        : `The colour changed less than wool ${found.number}, the strongest that has changed.`,
  }
  return { rating: off, grade: `${found.kind} ${found.number}`, bracket: off }
}

function cautionsOf(specimen: number, { left }: LightRating): string[] {
  const cautions: string[] = []
  if (specimen < firstFade)
    cautions.push(`Too early to judge: the colour has changed by less than ${firstFade}.`)
  const [stopped, unchanged] = (['stopped', 'unchanged'] as const).map((why) =>
    left.filter((wool) => wool.why === why).map(({ number }) => number),
  ) as [number[], number[]]
  if (stopped.length > 0)
    cautions.push(
      `The blue wools do not fall in order. ${wools(stopped)} changed no more than a stronger one. A wool that has stopped changing bounds nothing, so it was left out.`,
    )
  if (unchanged.length > 0)
    cautions.push(`${wools(unchanged)} has not changed at all, so nothing is read against it.`)
  return cautions
}

function wools(numbers: readonly number[]): string {
  return `wool ${numbers.join(' and wool ')}`.replace(/^wool/, 'Wool')
}

function twice(references: readonly { number: number }[]): Fault[] {
  const seen = new Set<number>()
  const faults: Fault[] = []
  for (const [place, { number }] of references.entries()) {
    if (seen.has(number))
      faults.push({
        pointer: pointerTo(['references', place, 'number']),
        detail: `Wool ${number} stands here already.`,
      })
    seen.add(number)
  }
  return faults
}
