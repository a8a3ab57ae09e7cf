import { z } from '#api/contract/schema.ts'
import { powerOfDifference, powerOfGroups, powerOfNoWorse, smallestN } from '#api/science/statistics/power.ts'
import { calculation, level as fraction, unavailable, workings } from './calculation.ts'
import { refuseAt } from './measured.ts'
import { mostGroups, twoSided, value } from './values.ts'

/** More units than this nobody dyes; beyond it there is no answer. */
const most = 1_000_000

const request = z.object({
  kind: z.enum(['difference', 'no-worse', 'groups']),
  sd: z.number().gt(0).max(1e100),
  effect: value.optional(),
  means: z.array(value).min(2).max(mostGroups).optional(),
  paired: z.boolean().default(false),
  power: fraction.default(0.8),
  level: twoSided,
  n: z.number().int().min(2).max(most).optional(),
})
type Question = z.output<typeof request>

/** How many units a plan needs, or what it can find with those it has: `POST /api/calculations/sample-size`. */
export const sampleSize = calculation({
  name: 'sample-size',
  summary: 'Units needed for a power, or the power reached with a number of units',
  request,
  reply: z.object({
    n: z.union([z.number(), unavailable]),
    power: z.union([z.number(), unavailable]),
    ...workings,
  }),
  compute: (question) => {
    const chance = chanceOf(question)
    const { n = smallestN(chance, { power: question.power, from: 2, most }) } = question
    const method = methodOf(question)
    const cautions = cautionsOf(question)
    if (hopeless(question))
      return question.n === undefined
        ? { n: nothingToFind, power: nothingToFind, method, cautions }
        : { n: question.n, power: chance(question.n), method, cautions }
    if (n === undefined) return { n: tooMany, power: tooMany, method, cautions }
    return { n, power: chance(n), method, cautions }
  },
})

const tooMany = { unavailable: `Even ${most} units do not give this power: the effect is too small.` }
const nothingToFind = {
  unavailable: 'There is nothing to find: the true difference is none, or already at the margin or beyond.',
}

function chanceOf({ kind, sd, effect, means, paired, level }: Question): (n: number) => number {
  if (kind === 'groups') {
    if (means === undefined) return refuseAt(['means'], 'This is missing.')
    return (n) => powerOfGroups(n, { means, sd, level })
  }
  if (effect === undefined) return refuseAt(['effect'], 'This is missing.')
  const units = { sd, effect, paired, level }
  return kind === 'difference' ? (n) => powerOfDifference(n, units) : (n) => powerOfNoWorse(n, units)
}

/** No number of units finds a difference of nothing. */
function hopeless({ kind, effect = 0, means = [] }: Question): boolean {
  if (kind === 'groups') return means.every((mean) => mean === means[0])
  return kind === 'difference' ? effect === 0 : effect <= 0
}

function methodOf({ kind, paired }: Question): string {
  const units = paired && kind !== 'groups' ? 'n counts pairs' : 'n counts the units of one group'
  if (kind === 'groups') return `One-way analysis of variance by non-central F; ${units}.`
  if (kind === 'difference') return `Two-sided t-test by non-central t, both tails counted; ${units}.`
  return `One-sided t-test at 1 − level by non-central t, against the margin; ${units}.`
}

function cautionsOf({ kind, paired, n }: Question): string[] {
  const cautions = [
    'A unit is what the treatment was given to: a pot or a session, not the skeins in it or the readings.',
  ]
  if (kind === 'groups' && paired)
    cautions.push('Groups are taken as independent; “paired” is for two of them only.')
  if (n !== undefined && n < 3) cautions.push('With fewer than 3 units nothing is ever claimed.')
  return cautions
}
