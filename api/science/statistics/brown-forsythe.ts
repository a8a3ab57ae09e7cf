import { median } from 'simple-statistics'
import { groupMoments, oneWayAnova } from './one-way-anova.ts'
import { isUnavailable, type Unavailable } from './unavailable.ts'
import type { WelchAnova } from './welch-anova.ts'

/**
 * Do groups differ in spread? An analysis of variance of the distances from each group's median (Brown & Forsythe
 * 1974, J. Am. Stat. Assoc. 69, 364–367). Groups of one or two say nothing: both distances are the same.
 *
 * @example
 * brownForsythe([[1, 2, 3], [1, 5, 9]]) // { F: 2.11765, df1: 1, df2: 4, p: 0.21931 }
 */
export function brownForsythe(groups: readonly (readonly number[])[]): WelchAnova | Unavailable {
  if (groups.length < 2) return { unavailable: 'One group alone has nothing to be compared with.' }
  if (groups.every((values) => values.length < 3))
    return { unavailable: 'Groups of one or two values say nothing about a difference in spread.' }
  const distances = groups.map((values) => {
    const middle = median([...values])
    return values.map((value) => Math.abs(value - middle))
  })
  const answer = oneWayAnova(groupMoments(distances))
  if (isUnavailable(answer))
    return { unavailable: 'The values of each group stand equally far from its median.' }
  // What is left of equal distances after rounding is no spread.
  const size = distances.reduce((sum, list) => sum + list.reduce((inner, it) => inner + it * it, 0), 0)
  if (answer.ssWithin <= 1e-28 * size)
    return { unavailable: 'The values of each group stand equally far from its median.' }
  return { F: answer.F, df1: answer.dfBetween, df2: answer.dfWithin, p: answer.p }
}
