import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Caution, Finding, LevelFinding, Step } from '#api/contract/finding.ts'
import { wearKey } from '#api/contract/wear-words.ts'
import { figure, listed, perCent } from '#web/form/number-words.ts'

type Verdict = NonNullable<Finding['verdict']>

/** The next thing to do about a verdict, strongest first; at most two. */
export type NextStep =
  | { readonly kind: 'declare' }
  | { readonly kind: 'sheet' }
  | { readonly kind: 'plan'; readonly words: string }

/**
 * What there is to do: declare what the plan has brought, make a sheet of what is settled, plan on what is not.
 *
 * @example
 * nextSteps({ answer: 'not-settled', sessionsMore: 2, sessionsIn: 2, sessionsPlanned: 4 }, { declared: false, locked: true }) // [{ kind: 'plan', words: 'Plan 2 more sessions' }]
 */
export function nextSteps(
  verdict: Pick<Verdict, 'answer' | 'sessionsMore' | 'sessionsIn' | 'sessionsPlanned'>,
  { declared, locked }: { readonly declared: boolean; readonly locked: boolean },
): NextStep[] {
  const { answer, sessionsMore, sessionsIn, sessionsPlanned } = verdict
  const declare: NextStep[] =
    !declared && locked && sessionsIn >= sessionsPlanned ? [{ kind: 'declare' }] : []
  if (answer !== 'not-settled') return [...declare, { kind: 'sheet' }]
  const more = sessionsMore === null || sessionsMore < 1 ? undefined : sessionsMore
  const words =
    more === undefined ? 'Look at the plan' : `Plan ${more} more ${more === 1 ? 'session' : 'sessions'}`
  return more === undefined ? [...declare, { kind: 'plan', words }] : [{ kind: 'plan', words }, ...declare]
}

/** The verdict that was declared of this look, at the same level of the second factor where there is one. */
export function keptOf(
  declared: readonly DeclaredVerdict[],
  { verdict, within }: Pick<Finding, 'verdict' | 'within'>,
): DeclaredVerdict | undefined {
  return declared.find(({ look, stratum }) => look === verdict?.look && stratum === (within?.levelId ?? ''))
}

/** The end of an address that asks for the level which a finding speaks of; empty where there is no second factor. */
export function withinQuery({ within }: Pick<Finding, 'within'>): string {
  return within === null ? '' : `?within=${within.levelId}`
}

/**
 * The tool’s cautions, then what its noise and its bounds leave open.
 *
 * @example
 * cautionsShown({ cautions: [], noise: { floor: 0.3, rms: 0.31, from: 'the twin of this trial, read again 4 times', n: 4, upperRms: 0.42, df: 6.9 }, notTested: [] })[0].text // 'Noise is about 0.3 ΔE00: the twin of this trial, read again 4 times. A difference below that is handling.'
 */
export function cautionsShown({
  cautions,
  noise,
  notTested,
}: Pick<Finding, 'cautions' | 'noise' | 'notTested'>): Caution[] {
  const shown: Caution[] = [...cautions]
  if (noise !== null && !cautions.some(({ title }) => /noise/i.test(title)))
    shown.push({
      kind: 'note',
      title: noise.n > 0 ? 'The noise of reading' : 'The noise is a guess',
      text: `Noise is about ${figure(noise.floor, 1)} ΔE00: ${noise.from}. A difference below that is handling.`,
    })
  if (notTested.length > 0)
    shown.push({
      kind: 'note',
      title: 'Only what was tried',
      text: `Nothing is said about ${listed(notTested)}.`,
    })
  return shown
}

/**
 * How many cautions a phone holds back, as its button says it.
 *
 * @example
 * moreCautions(2) // 'Two more cautions'
 */
export function moreCautions(count: number): string {
  const words = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine']
  return `${words[count] ?? count} more ${count === 1 ? 'caution' : 'cautions'}`
}

/** The one soft line over the steps of a ladder. */
export function stepsSay(finding: Finding): string {
  const { levels, steps, rule, verdict } = finding
  const reference = levels.find(({ id }) => id === steps.find((step) => step.reference)?.levelId)
  const confidence = verdict?.estimate?.confidence ?? 2 * (rule?.confidence ?? 0.95) - 1
  const inside = rule?.method === 'pooled' ? '' : ' within the same session'
  return `${capital(extraName(finding))} against ${reference?.words ?? 'the reference'}${inside}, with its ${perCent(confidence)} interval: the right end is the one-sided ${perCent((1 + confidence) / 2, oneSided(confidence))} limit that the rule looks at.`
}

const oneSided = (confidence: number): number =>
  Number.isInteger(Math.round(500 * (1 + confidence)) / 10) ? 0 : 1

/** “extra loss” for a change in colour, else “difference”. */
export function extraName({ outcome }: Pick<Finding, 'outcome'>): string {
  return outcome?.key === 'dE00' ? 'extra loss' : 'difference'
}

/**
 * On a phone, in place of the rows after the stop.
 *
 * @example
 * afterTheStop([{ label: '20 min', afterStop: false }, { label: '10 min', afterStop: true }, { label: '0 min', afterStop: true }]) // '10 min and 0 min come after the stop, at 20 min.'
 */
export function afterTheStop(steps: readonly Pick<Step, 'label' | 'afterStop'>[]): string | undefined {
  const after = steps.filter((step) => step.afterStop).map(({ label }) => label)
  if (after.length === 0) return undefined
  const stop = steps.findLast((step) => !step.afterStop)
  return `${listed(after)} ${after.length === 1 ? 'comes' : 'come'} after the stop${stop ? `, at ${stop.label}` : ''}.`
}

/** The side limits of a rule, each once, in the order of their steps. */
export function sidesOf(steps: readonly Step[]): Step['limits'] {
  const found = new Map<string, Step['limits'][number]>()
  for (const limit of steps.flatMap(({ limits }) => limits))
    if (!found.has(limit.key)) found.set(limit.key, limit)
  return [...found.values()]
}

/**
 * A side limit as the head of its column: the worst of a grade, the most of a count.
 *
 * @example
 * worstOf({ label: 'staining', limit: '4 or better' }) // 'worst staining'
 */
export function worstOf({ label, limit }: Pick<Step['limits'][number], 'label' | 'limit'>): string {
  return /better/.test(limit) ? `worst ${label}` : `most ${label}`
}

/**
 * What the labels of several tests begin with alike, and the rest of each: said once, the columns can be narrow.
 *
 * @example
 * alikeAtFirst(['staining after five warm hand washes', 'staining after ten dry rubs']) // { alike: 'staining after', rest: ['five warm hand washes', 'ten dry rubs'] }
 */
export function alikeAtFirst(labels: readonly string[]): { alike: string; rest: readonly string[] } {
  const [first = ''] = labels
  const alike = first.includes(' after ') ? first.slice(0, first.indexOf(' after ') + ' after '.length) : ''
  if (alike === '' || labels.length < 2 || !labels.every((label) => label.startsWith(alike)))
    return { alike: '', rest: labels }
  return { alike: alike.trim(), rest: labels.map((label) => label.slice(alike.length)) }
}

/**
 * Whether one skein’s side result lies outside the limit that the rule gives it.
 *
 * @example
 * isOutside('felting', 3, [{ outcome: 'felting', wear: {}, statistic: 'every unit', atMost: 2 }]) // true
 */
export function isOutside(
  key: string,
  value: number,
  conditions: readonly Pick<
    NonNullable<Finding['rule']>['conditions'][number],
    'outcome' | 'fibre' | 'wear' | 'statistic' | 'atLeast' | 'atMost'
  >[],
): boolean {
  const limit = conditions.find(({ outcome, fibre, statistic, wear }) => {
    const name = fibre === undefined ? outcome : `${outcome} of ${fibre}`
    if (statistic === 'worst lot') return key === `${name} ${wearKey(wear)}`.trim()
    return statistic === 'every unit' && key === name
  })
  if (limit?.atLeast !== undefined) return value < limit.atLeast
  return limit?.atMost !== undefined && value > limit.atMost
}

/** Levels from the reference down: the order of the steps, and of every table. */
export function fromTheTop(levels: readonly LevelFinding[]): LevelFinding[] {
  return levels.toSorted((one, other) => other.position - one.position)
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
