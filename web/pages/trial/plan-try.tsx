import './plan-try.css'
import type { PlanTried } from '#api/contract/plan.ts'
import type { Factor } from '#api/contract/trial.ts'
import { Field } from '#web/form/field.tsx'
import { figure, grouped } from '#web/form/number-words.ts'
import { firstTried, levelWords, referenceOf } from '#web/pages/trial/level-words.ts'
import { DeltaE, Sentence } from '#web/parts/delta-e.tsx'
import { Hundred } from '#web/parts/hundred.tsx'
import { Section } from '#web/parts/section.tsx'

/** Undefined: not touched, and then the tool’s own. */
export type TryDraft = {
  readonly spread: string | undefined
  readonly noise: string | undefined
  readonly seed: string
}

export type TryFaults = { readonly [Name in keyof TryDraft]?: string }

export type PlanTryProps = {
  readonly factor: Factor
  readonly tried: PlanTried | undefined
  readonly draft: TryDraft
  readonly onChange: (draft: TryDraft) => void
  readonly faults: TryFaults
  /** Being worked out anew: what is shown is of the plan before. */
  readonly busy: boolean
  /** Why it could not be tried. */
  readonly refused: unknown
  readonly sessionWord: { readonly one: string; readonly many: string }
}

/** Above this many of 100 a plan is likely enough to answer. */
const enough = 0.8

/** The plan tried on invented trials, before anything is dyed: how often would it answer rightly, and how often not? */
export function PlanTry(props: PlanTryProps) {
  const { tried, draft, onChange, faults, factor, busy, refused } = props
  const says =
    tried === undefined || tried.nothingToTry !== null
      ? 'Before dyeing anything.'
      : `Before dyeing anything: ${grouped(tried.trials)} invented trials, judged by your own rule.`
  const faultOf = (name: keyof TryDraft) => (faults[name] === undefined ? [] : [{ detail: faults[name] }])
  return (
    <Section title="Try the plan" says={says} onPaper>
      <div class="stack" aria-busy={busy}>
        {tried === undefined ? (
          <p class="soft">{refused instanceof Error ? refused.message : 'Trying …'}</p>
        ) : tried.nothingToTry !== null ? (
          <p>{tried.nothingToTry}</p>
        ) : (
          <>
            <Answers tried={tried} factor={factor} sessionWord={props.sessionWord} />
            <div class="plan-try-fields">
              <Field
                name="spread"
                label="Spread of differences"
                kind="number"
                unit={<DeltaE />}
                value={draft.spread ?? figure(tried.sdOfDifferences, 2).replace(/0$/, '')}
                onInput={(spread) => onChange({ ...draft, spread })}
                countsAs={draft.spread === undefined ? tried.sdFrom : undefined}
                faults={faultOf('spread')}
              />
              <Field
                name="noise"
                label="Measuring error"
                kind="number"
                unit={<DeltaE />}
                value={draft.noise ?? figure(tried.noise, 1)}
                onInput={(noise) => onChange({ ...draft, noise })}
                countsAs={draft.noise === undefined ? <Sentence text={tried.noiseFrom} /> : undefined}
                faults={faultOf('noise')}
              />
              <Field
                name="seed"
                label="Seed of the draw"
                kind="number"
                value={draft.seed}
                onInput={(seed) => onChange({ ...draft, seed })}
                countsAs="The same seed draws the same places."
                faults={faultOf('seed')}
              />
            </div>
          </>
        )}
      </div>
    </Section>
  )
}

function Answers({
  tried,
  factor,
  sessionWord,
}: Pick<PlanTryProps, 'factor' | 'sessionWord'> & { readonly tried: PlanTried }) {
  const reference = referenceOf(factor)
  const level = firstTried(factor)
  const one = level ? levelWords(factor, level) : 'a level'
  const other = reference ? levelWords(factor, reference) : 'the reference'
  const chosen = tried.power.find(({ saysHolds }) => saysHolds >= enough)
  const margin = figure(tried.margin ?? 0, 1)
  return (
    <>
      <p>
        If {one} is truly as good as {other}, how often would the plan say so?
      </p>
      <div class="hundreds">
        {tried.power.map(({ sessions, saysHolds }, place) => (
          <Hundred
            key={sessions}
            of100={saysHolds * 100}
            words={
              place === 0
                ? `of 100, with ${sessions} ${sessions === 1 ? sessionWord.one : sessionWord.many}`
                : `with ${sessions}`
            }
            chosen={chosen?.sessions === sessions}
          />
        ))}
      </div>
      <p class="plan-try-wrongly">
        And if it truly loses a full {margin} more, how often would it be passed wrongly?
      </p>
      <ul class="plan-try-shares plain-list">
        {tried.power.map(({ sessions, saysWrongly }, place) => (
          <li key={sessions}>
            <strong>{Math.round(saysWrongly * 100)}</strong>
            {place === tried.power.length - 1 ? ' of 100' : <span class="visually-hidden"> of 100</span>}
            <span class="visually-hidden">
              {' '}
              with {sessions} {sessions === 1 ? sessionWord.one : sessionWord.many}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}
