import { bounds, isVariable, variableKeys } from '#api/contract/bounds.ts'
import { type PatternFactor, patternPlan } from '#api/contract/patterns.ts'
import type { Factor } from '#api/contract/trial.ts'
import type { NewFactorSent } from '#web/api/trials.ts'

export type LevelDraft = { readonly id: string; readonly label: string }

/** What is varied, while it is being written. */
export type FactorDraft = {
  /** A key of the table of variables, or empty for one’s own. */
  readonly variable: string
  readonly ownName: string
  readonly ownUnit: string
  readonly stage: PatternFactor['stage']
  readonly kind: 'number' | 'category'
  readonly levels: readonly LevelDraft[]
  /** The id of the level that the others are held against. */
  readonly reference: string
}

/** The variables that can be set, in the order of work. */
export const settable = variableKeys.filter((key) => bounds[key].stage && bounds[key].measured !== true)

export const stageWords: Readonly<Record<PatternFactor['stage'], string>> = {
  soak: 'while soaking',
  dye: 'while dyeing',
  set: 'while steaming or setting',
  rinse: 'while rinsing',
  dry: 'while drying',
  wash: 'in the wash',
  contact: 'in wet contact',
  rub: 'in rubbing',
  light: 'in the light',
  remedy: 'as a remedy',
}

export const stageOptions = Object.entries(stageWords).map(([value, words]) => ({ value, words }))

type Made = Pick<Factor, 'key' | 'stage' | 'kind' | 'unit'> & {
  readonly levels: readonly { readonly label: string; readonly isReference: boolean }[]
}

export function draftOf({ key, stage, kind, unit, levels }: Made): FactorDraft {
  const drafts = levels.map(({ label }, place) => ({ id: String(place), label }))
  const reference = levels.findIndex(({ isReference }) => isReference)
  return {
    variable: isVariable(key) ? key : '',
    ownName: isVariable(key) ? '' : key,
    ownUnit: isVariable(key) ? '' : (unit ?? ''),
    stage,
    kind,
    levels: drafts,
    reference: drafts[reference]?.id ?? '',
  }
}

/** The factor that a pattern begins with. */
export function draftOfPattern(pattern: string): FactorDraft {
  const { factor } = patternPlan(pattern)
  const levels = factor.levels.map(({ label, reference }) => ({ label, isReference: reference === true }))
  return draftOf({ ...factor, unit: null, levels })
}

/** The unit beside the levels; empty for words. */
export function unitOf({ variable, ownUnit, kind }: FactorDraft): string {
  if (isVariable(variable)) return bounds[variable].unit
  return kind === 'number' ? ownUnit.trim() : ''
}

/**
 * A change of variable: a number keeps levels that are numbers; of words, or the other way about, one begins anew.
 */
export function withVariable(draft: FactorDraft, variable: string): FactorDraft {
  if (!isVariable(variable)) return { ...draft, variable: '' }
  const numbers = draft.levels.filter(({ label }) => Number.isFinite(Number(label.replace(',', '.'))))
  const levels =
    numbers.length >= 2
      ? numbers
      : [
          { id: '0', label: '' },
          { id: '1', label: '' },
        ]
  return { ...draft, variable, kind: 'number', stage: bounds[variable].stage ?? draft.stage, levels }
}

/** A further level, empty, after the last. */
export function withLevel(draft: FactorDraft): FactorDraft {
  const id = String(Math.max(-1, ...draft.levels.map((level) => Number(level.id))) + 1)
  return { ...draft, levels: [...draft.levels, { id, label: '' }] }
}

export function withoutLevel(draft: FactorDraft, id: string): FactorDraft {
  const levels = draft.levels.filter((level) => level.id !== id)
  return { ...draft, levels, reference: draft.reference === id ? '' : draft.reference }
}

export function withLabel(draft: FactorDraft, id: string, label: string): FactorDraft {
  return { ...draft, levels: draft.levels.map((level) => (level.id === id ? { id, label } : level)) }
}

/** As it is sent: blank levels are left out. Without a reference named, the highest or last is it. */
export function sentFactor(draft: FactorDraft): NewFactorSent {
  const filled = draft.levels.filter(({ label }) => label.trim() !== '')
  const unit = unitOf(draft)
  return {
    key: isVariable(draft.variable) ? draft.variable : draft.ownName.trim(),
    stage: draft.stage,
    kind: draft.kind,
    ...(unit === '' ? {} : { unit }),
    levels: filled.map(({ id, label }) => ({ label: label.trim(), isReference: id === draft.reference })),
  }
}

/** The place of a level in the form, from the pointer of a fault (`#/levels/2/value` counts only filled ones). */
export function levelOfPointer(draft: FactorDraft, pointer: string): LevelDraft | undefined {
  const place = /^#\/levels\/(\d+)/.exec(pointer)?.[1]
  if (place === undefined) return undefined
  return draft.levels.filter(({ label }) => label.trim() !== '')[Number(place)]
}
