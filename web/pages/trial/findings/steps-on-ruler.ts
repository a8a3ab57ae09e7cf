import type { Finding } from '#api/contract/finding.ts'
import { leadingOf, leastGainOf, questionOf } from '#api/contract/question.ts'
import { perCent } from '#web/form/number-words.ts'

/** What the ruler of a rule’s steps shows: what is compared, and the bound that the interval is held against. */
export type StepsOnRuler = {
  /** “Extra change”, “gain”: over the column of figures. */
  readonly name: string
  /** “margin”, “least gain”. */
  readonly boundName: string
  readonly bound: number
  /** The bound counts to both sides. */
  readonly bothSides: boolean
  /** One soft line over the steps. */
  readonly says: string
}

/**
 * How the steps stand on a ruler; undefined where no interval decides (limits, grades, blue wools).
 *
 * @example
 * stepsOnRuler({ steps: [], levels: [], rule: null, verdict: null }) // undefined
 */
export function stepsOnRuler({
  steps,
  levels,
  rule,
  verdict,
}: Pick<Finding, 'steps' | 'levels' | 'rule' | 'verdict'>): StepsOnRuler | undefined {
  const leading = rule === null ? undefined : leadingOf(rule.conditions)
  if (!rule || !leading || !steps.some(({ deciding }) => deciding !== null)) return undefined
  const question = questionOf(leading)
  const reference = levels.find(({ id }) => id === steps.find((step) => step.reference)?.levelId)
  const against = reference?.words ?? 'the reference'
  const inside = rule.method === 'pooled' ? '' : ' in the same session'
  const confidence = verdict?.estimate?.confidence ?? 2 * rule.confidence - 1
  const interval = `the ${perCent(confidence)} interval`
  const isColour = leading.outcome === 'dE00'
  const margin = leading.margin ?? 1
  if (question === 'no-worse')
    return {
      name: isColour ? 'extra change' : 'difference',
      boundName: 'margin',
      bound: margin,
      bothSides: false,
      says: `${isColour ? 'How much more it changed than' : 'How far it was from'} ${against}${inside}, with ${interval}: the right end must stay under the margin.`,
    }
  if (question === 'better')
    return {
      name: 'gain',
      boundName: 'least gain',
      bound: leastGainOf(leading),
      bothSides: false,
      says: `How much better it was than ${against}${inside}, with ${interval}: the left end must stay over the least gain worth having.`,
    }
  if (question === 'alike') {
    const bothSides = !(isColour && Object.keys(leading.wear).length === 0)
    return {
      name: 'difference',
      boundName: 'margin',
      bound: margin,
      bothSides,
      says: `How far it was from ${against}${inside}, with ${interval}: ${bothSides ? 'both ends must stay inside the margin' : 'the right end must stay under the margin'}.`,
    }
  }
  if (question === 'open-against-covered')
    return {
      name: 'difference',
      boundName: 'margin',
      bound: margin,
      bothSides: false,
      says: `How far the open half was from the covered half of the same skein, card by card, with ${interval}: the right end must stay under the margin.`,
    }
  return undefined
}
