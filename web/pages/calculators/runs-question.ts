import { mostRuns, type RunsGoal, type RunsQuestion } from '#api/science/design/runs-needed.ts'
import { perCent } from '#web/form/number-words.ts'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { type Measures, useMeasures } from '#web/pages/calculators/use-measures.ts'

export type RunsKey = 'margin' | 'extra' | 'difference' | 'sd' | 'chance'

export function useRunsFields({ usual }: Studio): Measures<RunsKey> {
  const change = { keptAs: '', unitWords: 'ΔE' } as const
  return useMeasures<RunsKey>('runs', {
    margin: { ...change, label: 'Margin, extra loss', words: 'the margin', amount: usual.margin },
    extra: { ...change, label: 'True extra loss, as you expect it', words: 'the extra loss', amount: '0' },
    difference: { ...change, label: 'Difference to find', words: 'the difference' },
    sd: {
      ...change,
      label: 'SD of the differences between sessions',
      words: 'the SD',
      blank: 'from earlier sessions; from four of them it is still rough',
    },
    chance: { label: 'Wanted chance', words: 'the chance', keptAs: '%', amount: '80' },
  })
}

/** The question as the sum takes it, or what it still waits for. */
export function runsQuestion(
  goal: RunsGoal,
  { value, missing }: Pick<Measures<RunsKey>, 'value' | 'missing'>,
): { missing: readonly string[]; question?: RunsQuestion & { readonly power: number } } {
  const isDifference = goal === 'difference'
  const blank = missing(
    ...(isDifference ? (['difference'] as const) : (['margin', 'extra'] as const)),
    'sd',
    'chance',
  )
  if (blank.length > 0) return { missing: blank }
  const [sd, chance] = [value('sd') ?? 0, value('chance') ?? 0]
  const distance = isDifference ? (value('difference') ?? 0) : (value('margin') ?? 0) - (value('extra') ?? 0)
  const wrong = [
    ...(distance > 0 ? [] : [isDifference ? 'a difference above 0' : 'an extra loss below the margin']),
    ...(sd > 0 ? [] : ['an SD above 0']),
    ...(chance > 0 && chance < 100 ? [] : ['a chance between 0 and 100 %']),
  ]
  return wrong.length > 0
    ? { missing: wrong }
    : { missing: [], question: { distance, sd, goal, power: chance / 100 } }
}

/**
 * A chance, never rounded to a certainty.
 *
 * @example
 * chanceInWords(0.9991).replace('\u00a0', ' ') // 'over 99 %'
 */
export function chanceInWords(chance: number): string {
  return chance > 0.99 ? `over ${perCent(0.99)}` : perCent(chance)
}

/**
 * The numbers of sessions that are worth showing beside the one needed.
 *
 * @example
 * runsShown(7) // [3, 4, 5, 6, 7, 8, 10]
 */
export function runsShown(needed: number | undefined): number[] {
  const usual = [3, 4, 5, 6, 8, 10]
  if (needed === undefined) return [...usual, 20, mostRuns]
  return [...new Set([...usual, needed])].sort((one, other) => one - other)
}
