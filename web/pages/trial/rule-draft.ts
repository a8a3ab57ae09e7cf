import { outcomeKind } from '#api/contract/outcomes.ts'
import { type PatternCondition, patternPlan } from '#api/contract/patterns.ts'
import { countsLots, type Question, questionOf } from '#api/contract/question.ts'
import type { Rule } from '#api/contract/trial.ts'
import { wearKey } from '#api/contract/wear-words.ts'
import type { NewRuleSent } from '#web/api/trials.ts'
import { numberTyped } from '#web/form/number-typed.ts'
import { type RuleSide, sideOf, wordsOfField } from '#web/pages/trial/rule-field-words.ts'
import { type QuestionChoice, questionChoices } from '#web/pages/trial/rule-questions.ts'

type Condition = Rule['conditions'][number]

/** One number of a rule, as it stands in the form. */
export type RuleField = {
  readonly id: string
  readonly label: string
  readonly help: string | undefined
  /** “ΔE00”, “or better”, “or fewer”. */
  readonly unit: string
  readonly side: RuleSide
  readonly question: Question
  readonly condition: Condition
  /** A limit may be left out; what judges may not. */
  readonly optional: boolean
  /** Left blank the question is still asked, by its usual bound. */
  readonly blankAsks: boolean
}

/** A condition of the rule, with the questions that may be asked of it where its pattern allows a choice. */
type Asked = {
  readonly key: string
  readonly condition: Condition
  readonly choice: QuestionChoice | undefined
}

export type RuleDraft = {
  readonly asked: readonly Asked[]
  readonly fields: readonly RuleField[]
  readonly typed: Readonly<Record<string, string>>
  /** The wear that the rule names; empty for a rule of what is not worn. */
  readonly wearAmount: string
  readonly wearAxis: string
  /** The wear that the rule named when the form was filled. */
  readonly wearBefore: string
  readonly method: Rule['method']
  readonly confidence: string
}

/** The form of a rule: the newest edition, and the limits that its pattern offers beside. */
export function ruleDraft(pattern: string, newest: Rule | undefined): RuleDraft {
  const usual = patternPlan(pattern).rule
  const kept: readonly Condition[] = newest?.conditions ?? usual.conditions.map(asNew)
  const mainWear = kept[0]?.wear ?? {}
  const [axis] = Object.keys(mainWear)
  const main = wearKey(mainWear)
  const keyOf = (it: Condition): string => {
    const own = wearKey(it.wear)
    const counted = countsLots(it) ? 'lots' : questionOf(it) === 'to-standard' ? (it.statistic ?? 'mean') : ''
    return [it.outcome, it.fibre ?? '', counted, own === main || own === '' ? '' : own].join('/')
  }
  const met = new Set(kept.map(keyOf))
  const offered = [...usual.conditions, ...usual.offers]
    .map(asNew)
    .map((it) => (wearKey(it.wear) === '' || main === '' || !newest ? it : { ...it, wear: mainWear }))
    .filter((it) => !met.has(keyOf(it)) && mayBeBlank(it))
    .map(withoutNumbers)
  const asked = [...kept, ...offered].map((condition) => ({
    key: keyOf(condition),
    condition,
    choice: questionChoices(pattern, condition),
  }))
  const fields = asked.map((it) => fieldOf(it, main))
  return {
    asked,
    fields,
    typed: Object.fromEntries(fields.map(({ id, side, condition }) => [id, said(condition, side)])),
    wearAmount: axis === undefined ? '' : String(mainWear[axis]),
    wearAxis: axis ?? '',
    wearBefore: main,
    method: newest?.method ?? usual.method,
    confidence: String(Number(((newest?.confidence ?? usual.confidence) * 100).toPrecision(6))),
  }
}

/** The form after another question is chosen of one condition: its number is another, what was typed elsewhere stays. */
export function askedAs(draft: RuleDraft, key: string, question: Question): RuleDraft {
  const asked = draft.asked.map((it) => {
    if (it.key !== key || questionOf(it.condition) === question) return it
    const { statistic: _, ...rest } = withoutNumbers(it.condition)
    return { ...it, condition: { ...rest, question, ...usualNumber(question) } }
  })
  const fields = asked.map((it) => fieldOf(it, draft.wearBefore))
  const before = Object.fromEntries(fields.map(({ id, side, condition }) => [id, said(condition, side)]))
  return { ...draft, asked, fields, typed: { ...before, ...draft.typed } }
}

/** The usual number of a question that a pattern does not begin with. */
function usualNumber(question: Question): Partial<Condition> {
  if (question === 'light') return { atLeast: 4 }
  return question === 'better' ? {} : { margin: 1 }
}

function fieldOf({ key, condition }: Asked, main: string): RuleField {
  const side = sideOf(condition)
  const question = questionOf(condition)
  return {
    id: `${key}/${side}`,
    side,
    question,
    condition,
    ...wordsOfField(condition, { side, main }),
    optional: mayBeBlank(condition),
    blankAsks: question === 'better' || question === 'light',
  }
}

/** A limit may be left out, and what is only described; what judges may not. */
function mayBeBlank(condition: Condition): boolean {
  const question = questionOf(condition)
  if (question === 'to-standard') return condition.statistic === 'every unit'
  return question === 'within-limit' && !countsLots(condition)
}

/** The rule as it is sent. What was typed and is no number goes as it is, for the server to name. */
export function sentRule(
  draft: RuleDraft,
  { plannedSessions, reason }: { readonly plannedSessions: number; readonly reason?: string },
): NewRuleSent {
  const confidence = numberTyped(draft.confidence)
  return {
    conditions: [...draft.fields.flatMap((field) => conditionOf(field, draft))],
    method: draft.method,
    plannedSessions,
    confidence: confidence === undefined ? draft.confidence : Number((confidence / 100).toPrecision(6)),
    ...(reason === undefined || reason.trim() === '' ? {} : { reason: reason.trim() }),
  }
}

/** The field of a fault of the server, whose pointers count the conditions that were sent. */
export function fieldOfPointer(draft: RuleDraft, pointer: string): RuleField | undefined {
  const place = /^#\/conditions\/(\d+)/.exec(pointer)?.[1]
  if (place === undefined) return undefined
  return draft.fields.filter((field) => conditionOf(field, draft).length > 0)[Number(place)]
}

/** Whether the form says something else than an edition does. */
export function differs(sent: NewRuleSent, rule: Rule | undefined): boolean {
  if (rule === undefined) return true
  const { conditions, method, plannedSessions, confidence } = rule
  const one = {
    conditions: sent.conditions,
    method: sent.method,
    of: sent.plannedSessions,
    at: sent.confidence,
  }
  return inOrder(one) !== inOrder({ conditions, method, of: plannedSessions, at: confidence })
}

function conditionOf(field: RuleField, draft: RuleDraft): Condition[] {
  const text = (draft.typed[field.id] ?? '').trim()
  if (text === '' && field.optional) return []
  const number = numberTyped(text)
  const { [field.side]: _, ...bare } = worn(field.condition, draft)
  // A text that is no number must reach the server as it is, to be refused at its place.
  const value = number ?? (text === '' ? undefined : (text as unknown as number))
  return [value === undefined ? bare : { ...bare, [field.side]: value }]
}

/** The condition at the wear that the form names, where it was one of that wear. */
function worn(condition: Condition, { wearAmount, wearAxis, wearBefore }: RuleDraft): Condition {
  const amount = numberTyped(wearAmount)
  if (wearBefore === '' || wearKey(condition.wear) !== wearBefore || wearAxis === '') return condition
  return { ...condition, wear: amount === undefined ? condition.wear : { [wearAxis]: amount } }
}

function said(condition: Condition, side: RuleSide): string {
  const value = condition[side]
  if (value === undefined) return ''
  if (outcomeKind(condition.outcome).scale === 'grade' && !Number.isInteger(value))
    return `${Math.floor(value)}-${Math.ceil(value)}`
  return side === 'margin' && Number.isInteger(value) ? value.toFixed(1) : String(value)
}

/** A pattern’s condition as a new rule sends it: by its question. “worst lot” and “every unit” of a batch still say what is counted. */
function asNew({ wear, ...stored }: PatternCondition): Condition {
  const question = questionOf({ ...stored, wear })
  const { statistic, ...rest } = stored
  const counts = countsLots(stored) || (question === 'to-standard' && statistic === 'every unit')
  const base = { ...rest, wear: { ...wear }, question, ...(counts ? { statistic } : {}) }
  if (question === 'light') return { ...usualNumber('light'), ...base }
  if (question !== 'sees' || base.atMost === undefined) return base
  // Half a margin is what must be told apart.
  const { atMost, ...others } = base
  return { ...others, margin: 2 * atMost }
}

function withoutNumbers(condition: Condition): Condition {
  const { margin: _, leastGain: __, atLeast: ___, atMost: ____, ...rest } = condition
  return rest
}

function inOrder(value: unknown): string {
  return JSON.stringify(value, (_, it: unknown) =>
    it !== null && typeof it === 'object' && !Array.isArray(it)
      ? Object.fromEntries(Object.entries(it).sort(([a], [b]) => (a < b ? -1 : 1)))
      : it,
  )
}
