import './trial/trial.css'
import { useRoute } from 'preact-iso'
import { planOf } from '#web/api/plans.ts'
import { factorsOf, rulesOf, trialOf } from '#web/api/trials.ts'
import { ruleLine } from '#web/pages/trial/rule-words.ts'
import {
  type PartName,
  partLabels,
  partNames,
  partOf,
  type TrialPartProps,
} from '#web/pages/trial/trial-parts.ts'
import { PageTitle } from '#web/parts/page-title.tsx'
import { PartTabs } from '#web/parts/part-tabs.tsx'
import { RuleLine } from '#web/parts/rule-line.tsx'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'
import { later } from '#web/state/later.tsx'
import { useLoaded } from '#web/state/loaded.ts'

const parts = {
  plan: later(async () => (await import('#web/pages/trial/plan-part.tsx')).PlanPart),
  readings: later(async () => (await import('#web/pages/trial/readings-part.tsx')).ReadingsPart),
  findings: later(async () => (await import('#web/pages/trial/findings-part.tsx')).FindingsPart),
  evidence: later(async () => (await import('#web/pages/trial/evidence-part.tsx')).EvidencePart),
}

/** One trial: its question and rule, and its parts below. */
export function TrialPage() {
  const { params } = useRoute()
  const id = params.id ?? ''
  const loaded = useLoaded(id, async (signal) => {
    const [trial, factors, rules, plan] = await Promise.all([
      trialOf(id, signal),
      factorsOf(id, signal),
      rulesOf(id, signal),
      planOf(id, signal),
    ])
    return { trial, factors, rules, plan }
  })
  return (
    <>
      {loaded.kind === 'refused' ? <PageTitle>This trial cannot be shown</PageTitle> : null}
      <WhenLoaded loaded={loaded}>
        {(value) => <TrialWithParts {...value} again={loaded.again} named={params.part} />}
      </WhenLoaded>
    </>
  )
}

function TrialWithParts({ named, ...props }: TrialPartProps & { readonly named: string | undefined }) {
  const { trial, rules, plan } = props
  const part = partOf(named, plan)
  const Part = parts[part]
  return (
    <div class={`trial trial-${part}`}>
      <div class="trial-head">
        <PageTitle name={`${trial.question} ${partLabels[part]}`}>{trial.question}</PageTitle>
        <RuleLine locked={rules.some((rule) => rule.lockedAt !== null)}>
          {trial.invented ? <strong>Invented data. </strong> : null}
          {ruleLine(rules, plan.firstResultAt)}
        </RuleLine>
      </div>
      <PartTabs name="Parts of this trial" tabs={partNames.map((name) => tabOf(trial.id, name, part))} />
      <div class="trial-part">
        <Part key={trial.id} {...props} />
      </div>
    </div>
  )
}

function tabOf(trialId: string, name: PartName, part: PartName) {
  return { href: `/trials/${trialId}/${name}`, label: partLabels[name], current: name === part }
}
