import { useState } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import type { Factor } from '#api/contract/trial.ts'
import { drawPlaces } from '#web/api/plans.ts'
import { addRule, lockRule } from '#web/api/trials.ts'
import { benchDraft, benchSizes } from '#web/pages/trial/bench-draft.ts'
import { BenchSheet } from '#web/pages/trial/bench-sheet.tsx'
import { hasReference, wantsTwins } from '#web/pages/trial/held-against.ts'
import { PlanBench } from '#web/pages/trial/plan-bench.tsx'
import { PlanDo } from '#web/pages/trial/plan-do.tsx'
import { PlanGuard } from '#web/pages/trial/plan-guard.tsx'
import { PlanHeld } from '#web/pages/trial/plan-held.tsx'
import { PlanRule } from '#web/pages/trial/plan-rule.tsx'
import { PlanTry, type TryDraft } from '#web/pages/trial/plan-try.tsx'
import { PlanVaried } from '#web/pages/trial/plan-varied.tsx'
import { differs, ruleDraft, sentRule } from '#web/pages/trial/rule-draft.ts'
import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { useTriedPlan } from '#web/pages/trial/tried-plan.ts'

/** The plan of a trial: what is varied, the bench, the rule, what is held the same; the tool speaks in the margin. */
export function PlanPart(props: TrialPartProps) {
  const { trial, factors, plan, again } = props
  const [factor] = factors
  const drawn = plan.sessions.length > 0
  return (
    <div class="stack-wide">
      {factor === undefined ? (
        <PlanVaried trial={trial} factors={factors} drawn={drawn} again={again} />
      ) : (
        // New levels are a new plan: the bench is counted anew.
        <PlanOf key={`${factor.id} ${plan.sessions.length}`} {...props} factor={factor} drawn={drawn} />
      )}
      {drawn ? <BenchSheet trial={trial} factors={factors} plan={plan} /> : null}
    </div>
  )
}

function PlanOf({
  factor,
  drawn,
  ...props
}: TrialPartProps & { readonly factor: Factor; readonly drawn: boolean }) {
  const { trial, factors, rules, plan, again } = props
  const { query } = useLocation()
  const bench = benchOfPattern(trial.pattern, factor.stage)
  const newest = rules.at(-1)
  const combinations = factors.reduce((product, { levels }) => product * levels.length, 1)
  const [benchTyped, setBenchTyped] = useState(() =>
    benchDraft(bench, { plan, rule: newest, levels: combinations, ...askedFor(query.sessions) }),
  )
  const [rule, setRule] = useState(() => ruleDraft(trial.pattern, newest))
  const [tryTyped, setTryTyped] = useState<TryDraft>({
    spread: undefined,
    noise: undefined,
    seed: String(trial.seed ?? newSeed()),
  })
  const [reason, setReason] = useState('')
  const [keptAs, setKeptAs] = useState('')
  const [doing, setDoing] = useState<string | undefined>()
  const [refused, setRefused] = useState<{ of: 'rule' | 'draw'; thrown: unknown } | undefined>()
  const { sizes, faults } = benchSizes(benchTyped)
  const {
    tried,
    busy,
    faults: tryFaults,
    seed,
    refused: notTried,
  } = useTriedPlan(trial.id, { sizes, rule, typed: tryTyped })
  const sent = sentRule(rule, { plannedSessions: sizes?.sessions ?? 1, reason })
  const changed = sizes !== undefined && differs(sent, newest)
  const guards = keptAs === JSON.stringify(sizes) ? [] : (tried?.guards ?? [])

  const act = async (of: 'rule' | 'draw', word: string, it: () => Promise<unknown>): Promise<void> => {
    setDoing(word)
    setRefused(undefined)
    try {
      await it()
      setReason('')
    } catch (thrown) {
      setRefused({ of, thrown })
    }
    setDoing(undefined)
    again()
  }
  const keep = () => act('rule', 'Keeping …', () => addRule(trial.id, sent))
  const lock = () =>
    act('rule', 'Locking …', async () => {
      const edition = changed || !newest ? (await addRule(trial.id, sent)).edition : newest.edition
      await lockRule(trial.id, edition)
    })
  const draw = (twins: boolean) =>
    act('draw', 'Drawing …', async () => {
      if (sizes) await drawPlaces(trial.id, { ...sizes, twins, ...(seed === undefined ? {} : { seed }) })
    })
  return (
    <div class="body-and-margin not-on-paper">
      <div class="stack-wide">
        <PlanVaried trial={trial} factors={factors} drawn={drawn} again={again} />
        <PlanBench
          factor={factor}
          bench={bench}
          draft={benchTyped}
          onChange={setBenchTyped}
          faults={faults}
          sizes={sizes}
          tried={tried}
          drawn={plan.sessions.length}
          referred={hasReference(trial.pattern)}
          held={trial.held}
        />
        <PlanRule
          draft={rule}
          onChange={setRule}
          rules={rules}
          changed={changed}
          plannedSessions={sizes?.sessions}
          sessionWord={bench.session}
          reason={reason}
          onReason={setReason}
          refused={refused?.of === 'rule' ? refused.thrown : undefined}
          busy={doing}
          onKeep={() => void keep()}
        />
        <PlanHeld trial={trial} again={again} />
      </div>
      <div class="stack-wide">
        {guards.length === 0 ? null : (
          <div>
            {guards.map((guard) => (
              <PlanGuard
                key={guard.kind}
                guard={guard}
                onTake={() => {
                  const { offer } = guard
                  if (offer === null) return
                  setBenchTyped({
                    sessions: String(offer.sessions),
                    vesselsPerLevel: String(offer.vesselsPerLevel),
                    skeinsPerVessel: String(offer.skeinsPerVessel),
                  })
                }}
                onKeep={() => setKeptAs(JSON.stringify(sizes))}
              />
            ))}
          </div>
        )}
        <PlanTry
          factor={factor}
          tried={tried}
          draft={tryTyped}
          onChange={setTryTyped}
          faults={tryFaults}
          busy={busy}
          refused={notTried}
          sessionWord={bench.session}
        />
        <PlanDo
          bench={bench}
          twinsWanted={wantsTwins(trial.pattern)}
          drawn={plan.sessions.length}
          sessions={sizes?.sessions}
          locked={!changed && newest?.lockedAt != null}
          measured={plan.results > 0}
          guarded={guards.some(({ offer }) => offer !== null)}
          doing={doing}
          refused={refused?.of === 'draw' ? refused.thrown : undefined}
          onLock={() => void lock()}
          onDraw={(twins) => void draw(twins)}
        />
      </div>
    </div>
  )
}

/** Eight digits: long enough, and still read aloud. */
function newSeed(): number {
  return 10_000_000 + ((crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % 90_000_000)
}

function askedFor(sessions: string | undefined): { asked?: number } {
  const asked = Number(sessions)
  return Number.isInteger(asked) && asked > 0 && asked <= 50 ? { asked } : {}
}
