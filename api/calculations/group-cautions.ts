import type { Summary } from '#api/science/statistics/summary.ts'

/** Below this many values in a group, tests of shape and spread can hardly find anything. */
const few = 8

/** What must be said beside a comparison of groups. */
export function groupCautions(summaries: readonly Summary[]): string[] {
  const cautions: string[] = []
  const sizes = summaries.map(({ n }) => n)
  const alone = sizes.filter((n) => n === 1).length
  if (summaries.length > 1 && alone > 0)
    cautions.push(
      `${alone === 1 ? 'One group has' : `${alone} groups have`} one value alone: nothing is known of the spread there.`,
    )
  if (Math.min(...sizes) < few)
    cautions.push(
      `With fewer than ${few} values in a group, the tests of shape and spread can hardly find anything: look at the picture.`,
    )
  if (summaries.length > 1 && Math.min(...sizes) < 5)
    cautions.push('With fewer than 5 values in a group, the p-value of Kruskal and Wallis’s test is rough.')
  const spreads = summaries.flatMap(({ sd }) => (typeof sd === 'number' ? [sd] : []))
  const [least, most] = [Math.min(...spreads), Math.max(...spreads)]
  if (spreads.length > 1 && most > 3 * least)
    cautions.push(
      'The spreads of the groups differ by more than three times: read Welch and Games–Howell, which do not take them for equal.',
    )
  return cautions
}
