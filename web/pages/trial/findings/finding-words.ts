import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Caution, Finding, LevelFinding, Step } from '#api/contract/finding.ts'
import { type Asking, countsLots, questionOf } from '#api/contract/question.ts'
import { wearKey } from '#api/contract/wear-words.ts'
import { listed } from '#web/form/number-words.ts'

type Verdict = NonNullable<Finding['verdict']>

/** The next thing to do about a verdict, strongest first; at most two. */
export type NextStep =
  | { readonly kind: 'record' }
  | { readonly kind: 'sheet' }
  | { readonly kind: 'plan'; readonly words: string }

/**
 * What there is to do: record what the plan has brought, make a sheet of what is settled, plan on what is not.
 *
 * @example
 * nextSteps({ answer: 'not-settled', sessionsMore: 2, sessionsIn: 2, sessionsPlanned: 4 }, { recorded: false, locked: true }) // [{ kind: 'plan', words: 'Plan 2 more sessions' }]
 */
export function nextSteps(
  verdict: Pick<Verdict, 'answer' | 'sessionsMore' | 'sessionsIn' | 'sessionsPlanned'>,
  { recorded, locked }: { readonly recorded: boolean; readonly locked: boolean },
): NextStep[] {
  const { answer, sessionsMore, sessionsIn, sessionsPlanned } = verdict
  const record: NextStep[] = !recorded && locked && sessionsIn >= sessionsPlanned ? [{ kind: 'record' }] : []
  if (answer !== 'not-settled') return [...record, { kind: 'sheet' }]
  const more = sessionsMore === null || sessionsMore < 1 ? undefined : sessionsMore
  const words =
    more === undefined ? 'Look at the plan' : `Plan ${more} more ${more === 1 ? 'session' : 'sessions'}`
  return more === undefined ? [...record, { kind: 'plan', words }] : [{ kind: 'plan', words }, ...record]
}

/** The verdict that was recorded of this look: of all parts together, or of the one that was asked for. */
export function keptOf(
  recorded: readonly DeclaredVerdict[],
  { verdict }: Pick<Finding, 'verdict'>,
  within: string | undefined,
): DeclaredVerdict | undefined {
  return recorded.find(({ look, stratum }) => look === verdict?.look && stratum === (within ?? ''))
}

/** The end of an address that asks for one part of several; empty for all of them together. */
export const withinQuery = (within: string | undefined): string =>
  within === undefined ? '' : `?within=${encodeURIComponent(within)}`

/**
 * The tool’s cautions, those under one title together, then what was not tried.
 *
 * @example
 * cautionsShown({ cautions: [], notTested: ['light'] })[0].text // ['Nothing is said about light.']
 */
export function cautionsShown({
  cautions,
  notTested,
}: Pick<Finding, 'cautions' | 'notTested'>): CautionShown[] {
  const shown = new Map<string, CautionShown>()
  for (const { kind, title, text } of cautions) {
    const before = shown.get(title)
    shown.set(title, { kind: before?.kind ?? kind, title, text: [...(before?.text ?? []), text] })
  }
  const all = [...shown.values()]
  if (notTested.length === 0) return all
  const text = [`Nothing is said about ${listed(notTested)}.`]
  return [...all, { kind: 'note', title: 'Only what was tried', text }]
}

export type CautionShown = Pick<Caution, 'kind' | 'title'> & { readonly text: readonly string[] }

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
 * isOutside('felting', 3, [{ outcome: 'felting', wear: {}, against: 'none', question: 'within-limit', atMost: 2 }]) // true
 */
export function isOutside(key: string, value: number, conditions: readonly Limit[]): boolean {
  const limit = conditions.find((condition) => {
    const { outcome, fibre, wear } = condition
    const name = fibre === undefined ? outcome : `${outcome} of ${fibre}`
    if (questionOf(condition) !== 'within-limit') return false
    return key === (countsLots(condition) ? `${name} ${wearKey(wear)}`.trim() : name)
  })
  if (limit?.atLeast !== undefined) return value < limit.atLeast
  return limit?.atMost !== undefined && value > limit.atMost
}

type Limit = Asking & { readonly fibre?: string | undefined }

/** Levels from the reference down: the order of the steps, and of every table. */
export function fromTheTop(levels: readonly LevelFinding[]): LevelFinding[] {
  return levels.toSorted((one, other) => other.position - one.position)
}
