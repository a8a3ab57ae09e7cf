import { useEffect, useState } from 'preact/hooks'
import type { PlanTried } from '#api/contract/plan.ts'
import { type TriedPlanSent, tryPlan } from '#web/api/plans.ts'
import { numberTyped } from '#web/form/number-typed.ts'
import type { BenchSizes } from '#web/pages/trial/bench-draft.ts'
import type { TryDraft } from '#web/pages/trial/plan-try.tsx'
import type { RuleDraft } from '#web/pages/trial/rule-draft.ts'

export type TriedPlanState = {
  /** Of the plan as it is, or while that is worked out, as it was. */
  readonly tried: PlanTried | undefined
  readonly busy: boolean
  readonly faults: Partial<TryDraft>
  readonly seed: number | undefined
}

/** So long after the last key the plan is tried. */
const pause = 250

/** The plan, counted and tried by the server a moment after it was last changed. */
export function useTriedPlan(
  trialId: string,
  { sizes, rule, typed }: { sizes: BenchSizes | undefined; rule: RuleDraft; typed: TryDraft },
): TriedPlanState {
  const [tried, setTried] = useState<{ asked: string; answer: PlanTried } | undefined>()
  const { sent, faults } = planToTry(sizes, rule, typed)
  const asked = sent === undefined ? '' : JSON.stringify(sent)
  useEffect(() => {
    if (sent === undefined) return
    const leaving = new AbortController()
    const timer = setTimeout(
      () => {
        tryPlan(trialId, sent, leaving.signal).then(
          (answer) => setTried({ asked, answer }),
          // What is wrong with a figure stands beside its field; without a connection the last answer stays.
          () => undefined,
        )
      },
      tried === undefined ? 0 : pause,
    )
    return () => {
      clearTimeout(timer)
      leaving.abort()
    }
  }, [trialId, asked])
  return {
    tried: tried?.answer,
    busy: tried !== undefined && tried.asked !== asked,
    faults,
    ...(sent?.seed === undefined ? { seed: undefined } : { seed: sent.seed }),
  }
}

/** What is sent to be tried, or nothing while a figure is at fault. */
export function planToTry(
  sizes: BenchSizes | undefined,
  rule: Pick<RuleDraft, 'fields' | 'typed' | 'confidence'>,
  typed: TryDraft,
): { readonly sent: TriedPlanSent | undefined; readonly faults: Partial<TryDraft> } {
  const faults: { -readonly [Name in keyof TryDraft]?: string } = {}
  const read = (name: keyof TryDraft, wanted: string, fits: (value: number) => boolean) => {
    if (typed[name].trim() === '') return undefined
    const value = numberTyped(typed[name])
    if (value !== undefined && fits(value)) return value
    faults[name] = wanted
    return undefined
  }
  const sdOfDifferences = read('spread', 'A number above 0, such as 0.5.', (it) => it > 0 && it <= 200)
  const noise = read('noise', 'A number from 0, such as 0.3.', (it) => it >= 0 && it <= 200)
  const seed = read('seed', 'A whole number from 0.', (it) => Number.isSafeInteger(it) && it >= 0)
  const tested = rule.fields.find(({ condition }) => condition.statistic === 'upper limit')
  const margin = tested && numberTyped(rule.typed[tested.id] ?? '')
  const confidence = numberTyped(rule.confidence)
  const usable = confidence !== undefined && confidence > 50 && confidence <= 99.9
  if (sizes === undefined || Object.keys(faults).length > 0) return { sent: undefined, faults }
  return {
    faults,
    sent: {
      ...sizes,
      ...(margin !== undefined && margin > 0 ? { margin } : {}),
      ...(usable ? { confidence: confidence / 100 } : {}),
      ...(sdOfDifferences === undefined ? {} : { sdOfDifferences }),
      ...(noise === undefined ? {} : { noise }),
      ...(seed === undefined ? {} : { seed }),
    },
  }
}
