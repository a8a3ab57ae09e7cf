import { Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { type Noise, noise as noiseOf, readingsNeeded } from '#api/science/colour/noise.ts'
import { calculation, lab, unavailable, workings } from './calculation.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'

const mostReadings = 100_000
/** Pairs of readings of one thing, over all things: what is compared to find the floor. */
const mostPairs = 1_000_000

const thing = z.object({ readings: z.array(lab).min(2).max(mostReadings) })
const noMargin = {
  unavailable: 'All readings of each thing are equal: copied or rounded values tell nothing about noise.',
}

/** What measuring itself does to a colour: `POST /api/calculations/noise`. */
export const noise = calculation({
  name: 'noise',
  summary: 'Noise of measuring, from unchanged things that were read again',
  request: z.object({
    things: z.array(thing).min(1).max(mostReadings),
    margin: z.number().gt(0).optional(),
    readingsPerMean: z.number().int().min(1).max(50).default(1),
  }),
  reply: z.object({
    sd: z.object({ L: z.number(), a: z.number(), b: z.number() }),
    df: z.number(),
    floor: z.number(),
    rms: z.number(),
    sdd: z.union([z.number(), unavailable]),
    margin: z.union([z.object({ readingsNeeded: z.number(), enough: z.boolean() }), unavailable]).optional(),
    ...workings,
  }),
  quick: (body) => {
    if (!isObject(body)) return undefined
    const things = Array.isArray(body.things) ? body.things : []
    // Each thing's own list comes first: one thing with millions of wrong readings is then stopped in time.
    refuseLongLists([
      ...things.map((one, i) => ({
        path: ['things', i, 'readings'],
        list: isObject(one) ? one.readings : undefined,
        item: lab,
        most: mostReadings,
      })),
      { path: ['things'], list: body.things, item: thing, most: mostReadings },
    ])
    return undefined
  },
  compute: ({ things, margin, readingsPerMean }) => {
    refuseTooMany(things)
    const found = noiseOf(
      things.map(({ readings }) => readings),
      { readingsPerMean },
    )
    const { sd, df, floor, rms, sdd } = found
    return {
      sd,
      df,
      floor,
      rms,
      sdd: sdd > 0 ? sdd : noMargin,
      ...(margin === undefined ? {} : { margin: judged(found, margin) }),
      method: `SD of one reading pooled within things; ${comparedHow(found, readingsPerMean)}; smallest detectable difference 2.8 × the largest SD ÷ √${readingsPerMean}.`,
      cautions: cautionsOf(found, margin),
    }
  },
})

function refuseTooMany(things: readonly { readings: readonly unknown[] }[]): void {
  const pairs = things.reduce((sum, { readings }) => sum + (readings.length * (readings.length - 1)) / 2, 0)
  const readings = things.reduce((sum, one) => sum + one.readings.length, 0)
  if (pairs <= mostPairs && readings <= mostReadings) return
  const detail = `These are ${readings} readings that make ${pairs} pairs; at most ${mostReadings} and ${mostPairs} are taken.`
  throw new Problem('at-fault', 'This is more than one request may carry.', [
    { pointer: pointerTo(['things']), detail },
  ])
}

function judged({ sd, sdd }: Noise, margin: number) {
  if (!(sdd > 0)) return noMargin
  const needed = readingsNeeded(sd, margin)
  if (!Number.isSafeInteger(needed))
    return { unavailable: 'No number of readings can see a margin as small as this.' }
  return { readingsNeeded: needed, enough: sdd <= (margin / 2) * (1 + 1e-12) }
}

function comparedHow({ means }: Noise, k: number): string {
  if (k === 1) return 'floor and rms over every pair of readings of one thing'
  return means === 'disjoint groups'
    ? `floor and rms over every two groups of ${k} readings of one thing without a shared reading`
    : `floor and rms over every pair of readings of one thing, divided by √${k} since there are not two means of ${k} to compare in each thing, or too many`
}

function cautionsOf({ df, floor, sdd }: Noise, margin: number | undefined): string[] {
  const cautions: string[] = []
  if (df < 10) cautions.push(`The noise is known from ${df} degrees of freedom only: read more things again.`)
  if (margin !== undefined && sdd > 0) {
    if (floor > margin / 2)
      cautions.push('The noise floor is over half the margin: this way of measuring cannot see the margin.')
    else if (floor > margin / 3) cautions.push('The noise floor is over a third of the margin.')
  }
  return cautions
}
