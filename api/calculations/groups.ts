import { type Fault, Problem, pointerTo } from '#api/contract/problem.ts'
import { z } from '#api/contract/schema.ts'
import { compareGroups } from '#api/science/statistics/groups.ts'
import type { PairOfGroups } from '#api/science/statistics/pairs-of-groups.ts'
import { calculation, unavailable, workings } from './calculation.ts'
import { groupCautions } from './group-cautions.ts'
import { isObject } from './lab-pairs.ts'
import { refuseLongLists } from './long-lists.ts'
import { refuseAt } from './measured.ts'
import { label, mostGroups, mostValues, twoSided, value, values } from './values.ts'

const group = z.object({ label, values })
type Label = z.output<typeof label>

const number = z.union([z.number(), unavailable])
const pairs = z.union([
  z.array(
    z.object({
      a: label,
      b: label,
      difference: z.number(),
      se: z.number().optional(),
      df: z.number().optional(),
      lower: z.number().optional(),
      upper: z.number().optional(),
      p: z.number().optional(),
      unavailable: z.string().optional(),
    }),
  ),
  unavailable,
])
const fTest = z.object({ F: z.number(), df1: z.number(), df2: z.number(), p: z.number() })
const sums = z.object({
  dfBetween: z.number(),
  dfWithin: z.number(),
  ssBetween: z.number(),
  ssWithin: z.number(),
})

/** Several groups of independent units compared in all the usual ways: `POST /api/calculations/groups`. */
export const groups = calculation({
  name: 'groups',
  summary: 'Groups of independent units: summaries, tests of all together, and all pairs',
  request: z.object({
    groups: z.array(group).min(1).max(mostGroups),
    reference: label.optional(),
    level: twoSided,
  }),
  reply: z.object({
    summaries: z.array(
      z.object({
        label,
        n: z.number(),
        mean: z.number(),
        sd: number,
        se: number,
        lower: number,
        upper: number,
        median: z.number(),
        min: z.number(),
        max: z.number(),
      }),
    ),
    anova: z.union([
      sums.extend({ F: z.number(), p: z.number(), msWithin: z.number(), etaSquared: z.number() }),
      sums.extend({ unavailable: z.string() }),
      unavailable,
    ]),
    welch: z.union([fTest, unavailable]),
    kruskalWallis: z.union([z.object({ H: z.number(), df: z.number(), p: z.number() }), unavailable]),
    brownForsythe: z.union([fTest, unavailable]),
    shapiroWilk: z.union([z.object({ W: z.number(), p: z.number() }), unavailable]),
    tukey: pairs,
    gamesHowell: pairs,
    dunnett: pairs.optional(),
    ...workings,
  }),
  quick: (body) => {
    const list = isObject(body) && Array.isArray(body.groups) ? body.groups : []
    refuseLongLists([
      { path: ['groups'], list, item: group, most: mostGroups },
      ...list.map((one, i) => ({
        path: ['groups', i, 'values'],
        list: isObject(one) ? one.values : undefined,
        item: value,
        most: mostValues,
      })),
    ])
    return undefined
  },
  compute: ({ groups: sent, reference, level }) => {
    refuseTooMany(sent)
    const labels = sent.map((one) => one.label)
    refuseTwice(labels)
    const found = compareGroups(
      sent.map((one) => one.values),
      { level, reference: reference === undefined ? undefined : placeOf(reference, labels) },
    )
    const named = (list: readonly PairOfGroups[] | { readonly unavailable: string }) =>
      'unavailable' in list
        ? { unavailable: list.unavailable }
        : list.map(({ a, b, ...pair }) => ({ a: labels[a] ?? '', b: labels[b] ?? '', ...pair }))
    return {
      summaries: found.summaries.map((one, i) => ({ label: labels[i] ?? '', ...one })),
      anova: found.anova,
      welch: found.welch,
      kruskalWallis: found.kruskalWallis,
      brownForsythe: found.brownForsythe,
      shapiroWilk: found.shapiroWilk,
      tukey: named(found.tukey),
      gamesHowell: named(found.gamesHowell),
      ...(found.dunnett ? { dunnett: named(found.dunnett) } : {}),
      method:
        'One-way analysis of variance, Welch, Kruskal–Wallis with ties, Brown–Forsythe about the medians, Shapiro–Wilk of the residuals; simultaneous intervals of pairs by Tukey–Kramer, Games–Howell and, against the reference on both sides, Dunnett. Each value counts as an independent unit.',
      cautions: groupCautions(found.summaries),
    }
  },
})

function placeOf(reference: Label, labels: readonly Label[]): number {
  const place = labels.findIndex((it) => String(it) === String(reference))
  return place >= 0 ? place : refuseAt(['reference'], `None of the groups is called “${reference}”.`)
}

function refuseTooMany(sent: readonly { values: readonly number[] }[]): void {
  const count = sent.reduce((sum, one) => sum + one.values.length, 0)
  if (count > mostValues)
    refuseAt(['groups'], `All groups together take at most ${mostValues} values; these are ${count}.`)
}

function refuseTwice(labels: readonly Label[]): void {
  const seen = new Set<string>()
  const faults: Fault[] = []
  for (const [place, it] of labels.entries()) {
    if (seen.has(String(it)))
      faults.push({
        pointer: pointerTo(['groups', place, 'label']),
        detail: `There is a group called “${it}” already.`,
      })
    seen.add(String(it))
  }
  if (faults.length > 0) throw new Problem('at-fault', 'Each group has a label of its own.', faults)
}
