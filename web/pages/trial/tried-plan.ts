import { useEffect, useState } from 'preact/hooks'
import type { PlanTried } from '#api/contract/plan.ts'
import { type TriedPlanSent, tryPlan } from '#web/api/plans.ts'
import { numberTyped } from '#web/form/number-typed.ts'
import type { BenchSizes } from '#web/pages/trial/bench-draft.ts'
import type { TryDraft, TryFaults } from '#web/pages/trial/plan-try.tsx'
import type { RuleDraft } from '#web/pages/trial/rule-draft.ts'

export type TriedPlanState = {
  /** Of the plan as it is, or while that is worked out, as it was. */
  readonly tried: PlanTried | undefined
  readonly busy: boolean
  readonly faults: TryFaults
  readonly seed: number | undefined
  /** Why the plan could not be tried. */
  readonly refused: unknown
}

/** So long after the last key the plan is tried. */
const pause = 250
/** So many invented trials give the first, rough answer. */
const rough = 1000

/** The plan, counted and tried by the server a moment after it was last changed. */
export function useTriedPlan(
  trialId: string,
  { sizes, rule, typed }: { sizes: BenchSizes | undefined; rule: RuleDraft; typed: TryDraft },
): TriedPlanState {
  const [tried, setTried] = useState<{ asked: string; answer: PlanTried } | undefined>()
  const [refused, setRefused] = useState<unknown>()
  const { sent, faults } = planToTry(sizes, rule, typed)
  const asked = sent === undefined ? '' : JSON.stringify(sent)
  useEffect(() => {
    if (sent === undefined) return
    const leaving = new AbortController()
    const timer = setTimeout(
      () => {
        const show = (answer: PlanTried) => {
          setTried({ asked, answer })
          setRefused(undefined)
        }
        // A rough answer at once, the fine one a second later. Without a connection the last one stays.
        tryPlan(trialId, { ...sent, trials: rough }, leaving.signal)
          .then(show)
          .then(() => tryPlan(trialId, sent, leaving.signal))
          .then(show)
          .catch((thrown: unknown) => {
            if (!leaving.signal.aborted) setRefused(thrown)
          })
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
    seed: sent?.seed,
    refused,
  }
}

/** What is sent to be tried, or nothing while a figure is at fault. */
export function planToTry(
  sizes: BenchSizes | undefined,
  rule: Pick<RuleDraft, 'fields' | 'typed' | 'confidence'>,
  typed: TryDraft,
): { readonly sent: TriedPlanSent | undefined; readonly faults: TryFaults } {
  const faults: { -readonly [Name in keyof TryDraft]?: string } = {}
  const read = (name: keyof TryDraft, wanted: string, fits: (value: number) => boolean) => {
    const text = typed[name]
    if (text === undefined) return undefined
    const value = numberTyped(text)
    if (value !== undefined && fits(value)) return value
    faults[name] = wanted
    return undefined
  }
  const sdOfDifferences = read('spread', 'A number above 0, such as 0.5.', (it) => it > 0 && it <= 200)
  const noise = read('noise', 'A number from 0, such as 0.3.', (it) => it >= 0 && it <= 200)
  const seed = read('seed', 'A whole number from 0.', (it) => Number.isSafeInteger(it) && it >= 0)
  const tested = rule.fields.find(({ question }) => question === 'no-worse')
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
