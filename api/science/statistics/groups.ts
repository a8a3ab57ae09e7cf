import { brownForsythe } from './brown-forsythe.ts'
import { kruskalWallis } from './kruskal-wallis.ts'
import { moments } from './moments.ts'
import { groupMoments, oneWayAnova } from './one-way-anova.ts'
import { dunnettTest, gamesHowell, tukeyKramer } from './pairs-of-groups.ts'
import { shapiroWilk } from './shapiro-wilk.ts'
import { summary } from './summary.ts'
import { welchAnova } from './welch-anova.ts'

export type GroupsQuestion = {
  /** Two-sided confidence of all intervals; 0.95 unless said. */
  readonly level?: number
  /** Place of the group that all others are compared with. */
  readonly reference?: number | undefined
}

/**
 * Everything that is asked of several groups of independent units: each by itself, all together, and pair by pair.
 * Groups go by their places. One group alone has its summary and the shape of its values.
 *
 * @throws RangeError when there is no group, a group is empty, or the reference is not one of them
 *
 * @example
 * compareGroups([[1, 2, 3], [4, 5, 6]]).anova // { F: 13.5, p: 0.0213 }
 */
export function compareGroups(
  groups: readonly (readonly number[])[],
  { level = 0.95, reference }: GroupsQuestion = {},
) {
  const each = groupMoments(groups)
  const alone = { unavailable: 'One group alone has nothing to be compared with.' }
  const pairs = <Pairs>(compare: () => Pairs) => (groups.length < 2 ? alone : compare())
  return {
    summaries: groups.map((values) => summary(values, { level })),
    anova: oneWayAnova(each),
    welch: welchAnova(each),
    kruskalWallis: kruskalWallis(groups),
    brownForsythe: brownForsythe(groups),
    shapiroWilk: shapiroWilk(groups.flatMap(residuals)),
    tukey: pairs(() => tukeyKramer(each, { level })),
    gamesHowell: pairs(() => gamesHowell(each, { level })),
    ...(reference === undefined ? {} : { dunnett: pairs(() => dunnettTest(each, { level, reference })) }),
  }
}

/** What each value differs from its group's mean by; exactly 0 where all are equal. */
function residuals(values: readonly number[]): number[] {
  const first = values[0] ?? 0
  const { fromOrigin } = moments(values)
  return values.map((value) => value - first - fromOrigin)
}
