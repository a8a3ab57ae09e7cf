import './plan-bench.css'
import type { PatternBench } from '#api/contract/patterns.ts'
import type { PlanTried } from '#api/contract/plan.ts'
import type { Factor, Trial } from '#api/contract/trial.ts'
import { Field } from '#web/form/field.tsx'
import { counted, grouped } from '#web/form/number-words.ts'
import { BenchCautions } from '#web/pages/trial/bench-cautions.tsx'
import type { BenchDraft, BenchSizes } from '#web/pages/trial/bench-draft.ts'
import { PlanGrid } from '#web/pages/trial/plan-grid.tsx'
import { Section } from '#web/parts/section.tsx'

export type PlanBenchProps = {
  readonly factor: Factor
  readonly bench: PatternBench
  readonly draft: BenchDraft
  readonly onChange: (draft: BenchDraft) => void
  readonly faults: Partial<BenchDraft>
  readonly sizes: BenchSizes | undefined
  readonly tried: PlanTried | undefined
  /** Sessions of which the places are drawn. */
  readonly drawn: number
  readonly referred: boolean
  /** What is held the same, which may call for cautions. */
  readonly held: Trial['held']
}

/** How many sessions, packets and skeins, drawn as they would stand, and what each level really counts. */
export function PlanBench(props: PlanBenchProps) {
  const { factor, bench, draft, onChange, faults, sizes, tried, drawn } = props
  const faultOf = (name: keyof BenchDraft) => (faults[name] === undefined ? [] : [{ detail: faults[name] }])
  const { session, vessel } = bench
  const asRow = bench.given === 'vessel'
  return (
    <Section title="On the bench">
      <div class="fields fields-in-pairs plan-bench-fields">
        <Field
          name="sessions"
          label={capital(session.many)}
          help={bench.sessionHelp}
          kind="number"
          value={draft.sessions}
          onInput={(sessions) => onChange({ ...draft, sessions })}
          faults={faultOf('sessions')}
          {...(session.one === 'session' ? { unit: 'days' } : {})}
        />
        {drawn > 0 ? null : (
          <>
            <Field
              name="vesselsPerLevel"
              label={asRow ? `${capital(vessel.many)} per level` : capital(vessel.many)}
              help={bench.vesselHelp}
              kind="number"
              unit={`a ${session.one}`}
              value={draft.vesselsPerLevel}
              onInput={(vesselsPerLevel) => onChange({ ...draft, vesselsPerLevel })}
              faults={faultOf('vesselsPerLevel')}
            />
            <Field
              name="skeinsPerVessel"
              label={asRow ? `Skeins per ${vessel.one}` : `Of each level on a ${vessel.one}`}
              help={`share the ${vessel.one}’s ${bench.shares}`}
              kind="number"
              value={draft.skeinsPerVessel}
              onInput={(skeinsPerVessel) => onChange({ ...draft, skeinsPerVessel })}
              faults={faultOf('skeinsPerVessel')}
            />
          </>
        )}
      </div>
      {sizes === undefined ? null : (
        <PlanGrid factor={factor} bench={bench} sizes={sizes} referred={props.referred} />
      )}
      {tried === undefined ? null : <Counts counts={tried.counts} bench={bench} />}
      {drawn > 0 ? null : (
        <BenchCautions vesselKinds={[bench.vesselKind]} factors={[factor]} held={props.held} />
      )}
    </Section>
  )
}

function Counts({ counts, bench }: { readonly counts: PlanTried['counts']; readonly bench: PatternBench }) {
  const { unitsPerLevel, skeinsPerLevel } = counts
  const thing = (count: number, { one, many }: { one: string; many: string }) => (
    <span>
      <strong>{grouped(count)}</strong> {count === 1 ? one : many}
    </span>
  )
  return (
    <p class="plan-counts">
      {thing(counts.skeins, { one: 'skein', many: 'skeins' })}
      {thing(counts.vessels, bench.vessel)}
      {thing(counts.sessions, bench.session)}
      <span class="plan-counts-units">
        each level counts <strong>{unitsPerLevel}</strong>
        {unitsPerLevel === skeinsPerLevel ? '' : `, not ${skeinsPerLevel}`}
        <span class="visually-hidden">: {counted(unitsPerLevel, 'independent unit')}</span>
      </span>
    </p>
  )
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
