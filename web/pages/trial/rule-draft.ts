import { outcomeKind } from '#api/contract/outcomes.ts'
import { type PatternCondition, patternPlan } from '#api/contract/patterns.ts'
import type { Rule } from '#api/contract/trial.ts'
import { wearInWords, wearKey } from '#api/contract/wear-words.ts'
import type { NewRuleSent } from '#web/api/trials.ts'
import { numberTyped } from '#web/form/number-typed.ts'

type Condition = Rule['conditions'][number]
type Side = 'margin' | 'atLeast' | 'atMost'

/** One number of a rule, as it stands in the form. */
export type RuleField = {
  readonly id: string
  readonly label: string
  readonly help: string | undefined
  /** “ΔE00”, “or better”, “or fewer”. */
  readonly unit: string
  readonly side: Side
  readonly condition: Condition
  /** A limit may be left out; what judges may not. */
  readonly optional: boolean
}

export type RuleDraft = {
  readonly fields: readonly RuleField[]
  /** Conditions without a number: a bracket, a gain. */
  readonly bare: readonly Condition[]
  readonly typed: Readonly<Record<string, string>>
  /** The wear that the rule names; empty for a rule of what is not worn. */
  readonly wearAmount: string
  readonly wearAxis: string
  readonly method: Rule['method']
  readonly confidence: string
}

/** The form of a rule: the newest edition, and the limits that its pattern offers beside. */
export function ruleDraft(pattern: string, newest: Rule | undefined): RuleDraft {
  const usual = patternPlan(pattern).rule
  const kept: readonly Condition[] = newest?.conditions ?? usual.conditions.map(asCondition)
  const mainWear = kept[0]?.wear ?? {}
  const [axis] = Object.keys(mainWear)
  const main = wearKey(mainWear)
  const idOf = (it: Condition): string => {
    const own = wearKey(it.wear)
    return [it.outcome, it.fibre ?? '', it.statistic, own === main || own === '' ? '' : own].join('/')
  }
  const met = new Set(kept.map(idOf))
  const offered = [...usual.conditions, ...usual.offers]
    .map(asCondition)
    .map((it) => (wearKey(it.wear) === '' || newest === undefined ? it : { ...it, wear: mainWear }))
    .filter((it) => !met.has(idOf(it)))
    .map(withoutNumbers)
  const fields: RuleField[] = []
  const bare: Condition[] = []
  const typed: Record<string, string> = {}
  for (const condition of [...kept, ...offered]) {
    const side = sideOf(condition)
    if (side === undefined) {
      if (kept.includes(condition)) bare.push(condition)
      continue
    }
    const id = idOf(condition)
    fields.push({ id, side, condition, ...wordsOf(condition, { side, main }) })
    typed[id] = said(condition, side)
  }
  return {
    fields,
    bare,
    typed,
    wearAmount: axis === undefined ? '' : String(mainWear[axis]),
    wearAxis: axis ?? '',
    method: newest?.method ?? usual.method,
    confidence: String(Number(((newest?.confidence ?? usual.confidence) * 100).toPrecision(6))),
  }
}

/** The rule as it is sent. What was typed and is no number goes as it is, for the server to name. */
export function sentRule(
  draft: RuleDraft,
  { plannedSessions, reason }: { readonly plannedSessions: number; readonly reason?: string },
): NewRuleSent {
  const confidence = numberTyped(draft.confidence)
  return {
    conditions: [
      ...draft.fields.flatMap((field) => conditionOf(field, draft)),
      ...draft.bare.map((it) => worn(it, draft)),
    ],
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
  const bare = withoutNumbers(worn(field.condition, draft))
  // A text that is no number must reach the server as it is, to be refused at its place.
  const value = number ?? (text === '' ? undefined : (text as unknown as number))
  return [value === undefined ? bare : { ...bare, [field.side]: value }]
}

/** The condition at the wear that the form names, where it was one of that wear. */
function worn(condition: Condition, { wearAmount, wearAxis, fields, bare }: RuleDraft): Condition {
  const before = wearKey((fields[0]?.condition ?? bare[0])?.wear ?? {})
  const amount = numberTyped(wearAmount)
  if (before === '' || wearKey(condition.wear) !== before || wearAxis === '') return condition
  return { ...condition, wear: amount === undefined ? condition.wear : { [wearAxis]: amount } }
}

function sideOf(condition: Condition): Side | undefined {
  const { statistic, margin, atLeast, atMost, against } = condition
  if (statistic === 'upper limit' || margin !== undefined || against === 'next level') return 'margin'
  if (atLeast !== undefined) return 'atLeast'
  if (atMost !== undefined) return 'atMost'
  if (statistic === 'every unit' || statistic === 'worst lot')
    return condition.direction === 'larger is better' ? 'atLeast' : 'atMost'
  return undefined
}

function wordsOf(
  condition: Condition,
  { side, main }: { readonly side: Side; readonly main: string },
): Pick<RuleField, 'label' | 'help' | 'unit' | 'optional'> {
  const { outcome, fibre, statistic, against, end, wear } = condition
  const kind = outcomeKind(outcome)
  const name = `${kind.label}${fibre === undefined || statistic !== 'worst lot' ? '' : ` of ${fibre}`}`
  const elsewhere = wearKey(wear) !== '' && wearKey(wear) !== main ? `after ${wearInWords(wear)}` : undefined
  if (side === 'margin') {
    return {
      label: outcome === 'dE00' ? 'Margin, extra loss' : `Margin, ${name}`,
      help: against === 'next level' ? 'between the means of neighbours' : elsewhere,
      unit: kind.unit ?? (outcome === 'lightness' ? 'L*' : ''),
      optional: false,
    }
  }
  const better = kind.scale === 'grade' ? 'or better' : 'or more'
  const less =
    kind.scale === 'count' ? 'or fewer' : kind.unit === undefined ? 'or less' : `${kind.unit} or less`
  return {
    label: outcome === 'staining' && statistic === 'every unit' ? 'Worst staining' : name,
    help:
      end === 'high'
        ? 'closes the window from above'
        : statistic === 'worst lot'
          ? (elsewhere ?? 'in the worst lot')
          : elsewhere,
    unit: side === 'atLeast' ? better : less,
    optional: statistic === 'every unit',
  }
}

function said(condition: Condition, side: Side): string {
  const value = condition[side]
  if (value === undefined) return ''
  if (outcomeKind(condition.outcome).scale === 'grade' && !Number.isInteger(value))
    return `${Math.floor(value)}-${Math.ceil(value)}`
  return side === 'margin' && Number.isInteger(value) ? value.toFixed(1) : String(value)
}

function asCondition({ wear, ...rest }: PatternCondition): Condition {
  return { ...rest, wear: { ...wear } }
}

function withoutNumbers({ margin: _, atLeast: __, atMost: ___, ...rest }: Condition): Condition {
  return rest
}

function inOrder(value: unknown): string {
  return JSON.stringify(value, (_, it: unknown) =>
    it !== null && typeof it === 'object' && !Array.isArray(it)
      ? Object.fromEntries(Object.entries(it).sort(([a], [b]) => (a < b ? -1 : 1)))
      : it,
  )
}
