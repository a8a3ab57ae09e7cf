import type { Finding } from '#api/contract/finding.ts'
import type { PlanTried } from '#api/contract/plan.ts'
import { tryPlan } from '#web/api/plans.ts'
import { figure, grouped } from '#web/form/number-words.ts'
import { type PlansInQuestion, plansInQuestion } from '#web/pages/trial/findings/plans-in-question.ts'
import { Sentence } from '#web/parts/delta-e.tsx'
import { Hundred } from '#web/parts/hundred.tsx'
import { Reading } from '#web/parts/reading.tsx'
import { Section } from '#web/parts/section.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** While a trial is open: what would settle it, and how likely so many more sessions are to. */
export function WhatWouldSettle({ finding }: { readonly finding: Finding }) {
  const { verdict } = finding
  if (verdict === null || verdict.answer !== 'not-settled' || verdict.settle === '') return null
  const plans = plansInQuestion(finding)
  return (
    <Section title="What would settle it">
      <div class="stack">
        <p>
          <Sentence text={verdict.settle} />
        </p>
        {plans === undefined ? null : <Chances finding={finding} plans={plans} />}
      </div>
    </Section>
  )
}

type ChancesProps = { readonly finding: Finding; readonly plans: PlansInQuestion }

/** How often of a hundred the plan would say so, as it stands and with more sessions: invented trials, judged alike. */
function Chances({ finding, plans }: ChancesProps) {
  const { trialId, verdict, levels, steps } = finding
  const loaded = useLoaded(`${trialId} ${JSON.stringify(plans)}`, async (signal) => {
    const later = await tryPlan(trialId, plans.later, signal)
    const already = shareAt(later, plans.now.sessions)
    if (already !== undefined) return { now: already, later }
    return { now: shareAt(await tryPlan(trialId, plans.now, signal), plans.now.sessions), later }
  })
  if (loaded.kind === 'reading') return <Reading />
  // Without the chances the sentence still stands; the page says nothing of what it does not know.
  if (loaded.kind === 'refused') return null
  const { now, later } = loaded.value
  const then = shareAt(later, plans.later.sessions)
  if (now === undefined || then === undefined) return null
  const subject = levels.find(({ id }) => id === verdict?.subjectId)
  const reference = levels.find(({ id }) => id === steps.find((step) => step.reference)?.levelId)
  return (
    <>
      <p class="soft">
        If {subject?.words ?? 'this level'} is truly as good as {reference?.words ?? 'the reference'}, how
        often would the plan say so?
      </p>
      <div class="hundreds finding-hundreds">
        <Hundred of100={100 * now} words="of 100 as it stands" />
        <Hundred of100={100 * then} words={`with ${plans.more} more`} chosen />
      </div>
      <p class="soft small">
        <Sentence
          text={`${grouped(later.trials)} invented trials. Spread of the differences ${figure(later.sdOfDifferences)} ΔE00${plans.later.sdOfDifferences === undefined ? `: ${lower(later.sdFrom)}` : ', the upper 80\u00a0% limit of what was seen here.'} Measuring error ${figure(later.noise, 1)}.`}
        />
      </p>
    </>
  )
}

function shareAt({ power }: PlanTried, sessions: number): number | undefined {
  return power.find((it) => it.sessions === sessions)?.saysHolds
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
