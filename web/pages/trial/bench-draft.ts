import type { PatternBench } from '#api/contract/patterns.ts'
import type { DrawnPlan } from '#api/contract/plan.ts'
import type { Rule } from '#api/contract/trial.ts'
import { wholeTyped } from '#web/form/number-typed.ts'

/** How many of each, as typed. */
export type BenchDraft = {
  readonly sessions: string
  readonly vesselsPerLevel: string
  readonly skeinsPerVessel: string
}
export type BenchSizes = { readonly [Name in keyof BenchDraft]: number }

const bounds = {
  sessions: { min: 1, max: 50 },
  vesselsPerLevel: { min: 1, max: 20 },
  skeinsPerVessel: { min: 1, max: 20 },
} as const

/**
 * The bench to begin with: as it was drawn, else as the rule plans it, else as the pattern usually has it.
 *
 * @param asked Sessions that an address asks for, as “Plan 2 more sessions” does.
 */
export function benchDraft(
  bench: PatternBench,
  {
    plan,
    rule,
    levels,
    asked,
  }: {
    readonly plan: DrawnPlan
    readonly rule: Rule | undefined
    readonly levels: number
    readonly asked?: number
  },
): BenchDraft {
  const drawn = plan.sessions[0]?.vessels ?? []
  const sessions = Math.max(
    asked ?? 0,
    plan.sessions.length,
    rule?.plannedSessions ?? (asked ? 0 : bench.sessions),
  )
  const perLevel =
    bench.given === 'skein'
      ? drawn.filter((it) => !it.label.startsWith('envelope')).length
      : Math.round(drawn.length / Math.max(1, levels))
  const skeins =
    bench.given === 'skein' ? 0 : (drawn[0]?.skeins.filter(({ role }) => role === 'treated').length ?? 0)
  return {
    sessions: String(sessions),
    vesselsPerLevel: String(perLevel || bench.vesselsPerLevel),
    skeinsPerVessel: String(skeins || bench.skeinsPerVessel),
  }
}

/** What the fields say as numbers, or what is wrong with each. */
export function benchSizes(
  draft: BenchDraft,
):
  | { readonly sizes: BenchSizes; readonly faults: Partial<BenchDraft> }
  | { readonly sizes: undefined; readonly faults: Partial<BenchDraft> } {
  const names = ['sessions', 'vesselsPerLevel', 'skeinsPerVessel'] as const
  const faults: { -readonly [Name in keyof BenchDraft]?: string } = {}
  const sizes = { sessions: 0, vesselsPerLevel: 0, skeinsPerVessel: 0 }
  for (const name of names) {
    const read = wholeTyped(draft[name], bounds[name])
    if (read.fault === undefined) sizes[name] = read.value
    else faults[name] = read.fault
  }
  return Object.keys(faults).length > 0 ? { sizes: undefined, faults } : { sizes, faults }
}
