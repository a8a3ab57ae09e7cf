import { z } from '#api/contract/schema.ts'
import { chiSquared, chiSquaredQuantile } from '#api/science/statistics/chi-squared.ts'
import { dunnett, dunnettQuantile } from '#api/science/statistics/dunnett.ts'
import { fDistribution, fQuantile } from '#api/science/statistics/f-distribution.ts'
import { noncentralF, noncentralFQuantile } from '#api/science/statistics/noncentral-f.ts'
import { noncentralT, noncentralTQuantile } from '#api/science/statistics/noncentral-t.ts'
import { normal, normalQuantile } from '#api/science/statistics/normal.ts'
import { studentT, studentTQuantile } from '#api/science/statistics/student-t.ts'
import { studentizedRange, studentizedRangeQuantile } from '#api/science/statistics/studentized-range.ts'
import type { Tails } from '#api/science/statistics/tails.ts'
import { calculation, level, unavailable, workings } from './calculation.ts'
import { refuseAt } from './measured.ts'

const df = z.number().min(0.01).max(1e9).optional()
const size = z.number().int().min(1).max(50_000)

const request = z.object({
  kind: z.enum(['normal', 't', 'F', 'chi-squared', 'studentized-range', 'dunnett']),
  at: z.number().optional(),
  probability: level.optional(),
  df,
  df1: df,
  df2: df,
  groups: z.number().int().min(2).max(10_000).optional(),
  noncentrality: z.number().min(-1e6).max(1e6).optional(),
  nReference: size.optional(),
  nOthers: z.array(size).min(1).max(63).optional(),
  sides: z.union([z.literal(1), z.literal(2)]).default(2),
})
type Question = z.output<typeof request>
type Distribution = {
  readonly tails: (at: number) => Tails
  readonly quantile: (probability: number) => number
  readonly method: string
}

/** Tails and quantiles of the distributions behind all intervals: `POST /api/calculations/distribution`. */
export const distribution = calculation({
  name: 'distribution',
  summary: 'Both tails of a distribution at a place, or its place for a probability',
  request,
  reply: z.object({
    lower: z.number().optional(),
    upper: z.number().optional(),
    quantile: z.union([z.number(), unavailable]).optional(),
    ...workings,
  }),
  compute: (question) => {
    const { at, probability } = question
    if (at === undefined && probability === undefined)
      refuseAt(['at'], 'Give at, a place, or probability, that of the lower tail.')
    const { tails, quantile, method } = distributionOf(question)
    return {
      ...(at === undefined ? {} : bothOf(tails(at))),
      ...(probability === undefined ? {} : { quantile: toldOf(() => quantile(probability)) }),
      method,
      cautions: [],
    }
  },
})

const bothOf = ({ lower, upper }: Tails) => ({ lower, upper })

/** A quantile can lie beyond the largest number, or nearer to 0 than the smallest. */
function toldOf(quantile: () => number) {
  try {
    const place = quantile()
    if (Number.isFinite(place)) return place
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
  }
  return { unavailable: 'This place lies beyond the numbers that can be told.' }
}

function distributionOf(question: Question): Distribution {
  const { kind, noncentrality } = question
  if (noncentrality !== undefined && kind !== 't' && kind !== 'F')
    refuseAt(['noncentrality'], 'Only t and F take a noncentrality.')
  switch (kind) {
    case 'normal':
      return {
        tails: normal,
        quantile: normalQuantile,
        method: 'Normal distribution, rational approximation.',
      }
    case 't':
      return tOf(given(question, 'df'), noncentrality)
    case 'F':
      return fOf(given(question, 'df1'), given(question, 'df2'), noncentrality)
    case 'chi-squared': {
      const of = given(question, 'df')
      return {
        tails: (x) => chiSquared(x, of),
        quantile: (p) => chiSquaredQuantile(p, of),
        method: 'Chi-squared by the incomplete gamma function.',
      }
    }
    case 'studentized-range': {
      const of = { groups: given(question, 'groups'), df: given(question, 'df') }
      return {
        tails: (q) => studentizedRange(q, of),
        quantile: (p) => studentizedRangeQuantile(p, of),
        method: 'Studentized range by quadrature over the place and the spread.',
      }
    }
    case 'dunnett':
      return dunnettOf(question)
  }
}

function given(question: Question, name: 'df' | 'df1' | 'df2' | 'groups' | 'nReference'): number {
  return question[name] ?? refuseAt([name], 'This is missing.')
}

function tOf(of: number, noncentrality: number | undefined): Distribution {
  if (noncentrality === undefined || noncentrality === 0)
    return {
      tails: (t) => studentT(t, of),
      quantile: (p) => studentTQuantile(p, of),
      method: 'Student’s t by the incomplete beta function.',
    }
  return {
    tails: (t) => noncentralT(t, of, noncentrality),
    quantile: (p) => noncentralTQuantile(p, of, noncentrality),
    method: 'Non-central t by quadrature over the estimated spread.',
  }
}

function fOf(df1: number, df2: number, noncentrality: number | undefined): Distribution {
  if (noncentrality !== undefined && noncentrality < 0)
    refuseAt(['noncentrality'], 'The noncentrality of F is at least 0.')
  if (noncentrality === undefined || noncentrality === 0)
    return {
      tails: (F) => fDistribution(F, df1, df2),
      quantile: (p) => fQuantile(p, df1, df2),
      method: 'F by the incomplete beta function.',
    }
  return {
    tails: (F) => noncentralF(F, df1, df2, noncentrality),
    quantile: (p) => noncentralFQuantile(p, df1, df2, noncentrality),
    method: 'Non-central F as a Poisson mixture of incomplete beta functions.',
  }
}

function dunnettOf(question: Question): Distribution {
  const nOthers = question.nOthers ?? refuseAt(['nOthers'], 'This is missing.')
  const { sides } = question
  const of = { df: given(question, 'df'), nReference: given(question, 'nReference'), nOthers, sides }
  return {
    tails: (t) => dunnett(t, of),
    quantile: (p) => dunnettQuantile(p, of),
    method: `Dunnett’s largest ${sides === 2 ? '|t|' : 't'} against one reference, by quadrature over what comparisons share and the spread.`,
  }
}
