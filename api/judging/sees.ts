import { wearKey } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import { isUnavailable } from '#api/science/statistics/unavailable.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { figure, margin as marginFigure } from '#api/words/numbers.ts'
import type { ReadingSeen } from '#db/trial-record.ts'
import type { Engine } from './asked.ts'
import { type AxisSeen, detectableDifference, placingsNeeded } from './detectable-difference.ts'
import { occasionsOf } from './occasions.ts'
import { commonestWay, isReadSo } from './way-of-measuring.ts'

const units = { one: 'day', many: 'days' }

const axes = [
  { name: 'L*', key: 'L', of: (it: ReadingSeen) => it.meanL },
  { name: 'a*', key: 'a', of: (it: ReadingSeen) => it.meanA },
  { name: 'b*', key: 'b', of: (it: ReadingSeen) => it.meanB },
] as const

/** Is a way of measuring fine enough for a margin? One answer, of the way in which most of the skeins were read. */
export const judgeSees: Engine = (asked) => {
  const { condition, trial } = asked
  const margin = condition.margin ?? (condition.atMost === undefined ? undefined : 2 * condition.atMost)
  const read = trial.record.readings.filter((it) => !it.wet && wearKey(it.wear) === wearKey(condition.wear))
  const way = commonestWay(read)
  const alike = way ? read.filter((it) => isReadSo(it, way)) : []
  const occasionOf = occasionsOf(alike)
  const again = [...groupBy(alike, (it) => it.skeinId).values()].filter((mine) => mine.length > 1)
  const days = new Set(again.flat().map((it) => occasionOf(it.sittingId))).size
  const placings = way?.placings ?? 1
  const found = axes.map(({ name, key, of }) => ({
    name,
    key,
    seen: detectableDifference(
      again.map((mine) =>
        [...groupBy(mine, (it) => occasionOf(it.sittingId)).values()].map((occasion) => occasion.map(of)),
      ),
      placings,
    ),
  }))
  const known = found.flatMap(({ seen, ...it }) => (isUnavailable(seen) ? [] : [{ ...it, seen }]))
  const [first] = known
  const largest = first && known.reduce((one, other) => (other.seen.sd > one.seen.sd ? other : one), first)
  const common = {
    condition,
    levelId: null,
    n: days,
    units,
    table: null,
    limit: null,
    cautions: [],
    more: null,
  }
  if (margin === undefined || !largest)
    return [
      {
        ...common,
        answer: 'not-settled',
        reason: reasonWithout({ margin, again: again.length, days }),
        estimate: null,
        method: [],
        figures: { skeins: again.length },
      },
    ]
  const { seen, name } = largest
  const answer = seesMargin(seen, margin)
  return [
    {
      ...common,
      answer,
      reason: reasonOf(answer, { seen, name, margin, placings }),
      estimate: {
        value: seen.smallest,
        lower: seen.lower,
        upper: seen.upper,
        confidence: 0.6,
        unit: name,
      },
      method: [
        'Variance of each axis by placing and by day, by mean squares within skeins that were read again.',
        `Smallest detectable difference: 2.8 × the largest SD of a reading of ${placings === 1 ? 'one placing' : `${placings} placings`}, with its one-sided 80\u00a0% limits (chi-squared, ${figure(seen.df, 1)} degrees of freedom).`,
      ],
      figures: {
        margin,
        skeins: again.length,
        placings,
        placingsNeeded: placingsNeeded(seen, margin / 2) ?? null,
        ...Object.fromEntries(
          known.flatMap((axis) => [
            [`placing ${axis.key}`, axis.seen.placing],
            [`day ${axis.key}`, axis.seen.day],
          ]),
        ),
      },
    },
  ]
}

/**
 * Half the margin must be no less than the smallest detectable difference, by its upper limit; by its lower limit it is
 * plain that it is less.
 *
 * @example
 * [seesMargin({ lower: 0.3, upper: 0.5 }, 1), seesMargin({ lower: 0.3, upper: 0.6 }, 1), seesMargin({ lower: 0.51, upper: 0.9 }, 1)] // ['holds', 'not-settled', 'does-not-hold']
 */
export function seesMargin({ lower, upper }: Pick<AxisSeen, 'lower' | 'upper'>, margin: number): Verdict {
  if (upper <= margin / 2) return 'holds'
  return lower > margin / 2 ? 'does-not-hold' : 'not-settled'
}

function reasonOf(
  answer: Verdict,
  { seen, name, margin, placings }: { seen: AxisSeen; name: string; margin: number; placings: number },
): string {
  const wanted = figure(margin / 2)
  const by = placings === 1 ? 'single readings' : `means of ${placings} readings`
  const needs = `a margin of ${marginFigure(margin)} needs ${wanted} or less`
  const range = `${figure(seen.smallest)} in ${name} (${figure(seen.lower)} to ${figure(seen.upper)})`
  if (answer === 'holds') return `With ${by} it can tell differences of ${range}; ${needs}.`
  if (answer === 'not-settled')
    return `With ${by} it tells differences of ${range}, and ${needs}: read the same skeins again on more days.`
  const enough = placingsNeeded(seen, margin / 2)
  return `With ${by} it cannot tell differences smaller than ${range}; ${needs}${enough === undefined ? '' : `, about the mean of ${enough} readings`}.`
}

function reasonWithout({
  margin,
  again,
  days,
}: {
  margin: number | undefined
  again: number
  days: number
}): string {
  if (margin === undefined) return 'Name the margin that it must be fine enough for.'
  if (again === 0) return 'No skein was read twice: read the same skeins again on another day.'
  if (days < 2) return 'All readings are of one day: read the same skeins again on another day.'
  return 'All readings are the same: were they copied?'
}
