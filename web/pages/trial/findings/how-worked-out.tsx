import { useId, useState } from 'preact/hooks'
import type { Finding } from '#api/contract/finding.ts'
import { figure } from '#web/form/number-words.ts'
import { GatesFound } from '#web/pages/trial/findings/gates-found.tsx'
import { RawAndNet } from '#web/pages/trial/findings/raw-and-net.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { Note } from '#web/parts/note.tsx'

/** The rule, the gates, the method, its measuring error, raw and net figures; a phone folds it. */
export function HowWorkedOut({ finding }: { readonly finding: Finding }) {
  const [open, setOpen] = useState(false)
  const id = useId()
  const { ruleInWords, method, noise, evidenceStep, gates } = finding
  const title = 'How this was worked out'
  return (
    <div class="body-and-margin">
      <section class="section" aria-labelledby={`${id}-title`}>
        <h2 id={`${id}-title`}>
          <span class="not-on-phone">{title}</span>
          <button
            type="button"
            class="finding-fold phone-only"
            aria-expanded={open}
            aria-controls={`${id}-body`}
            onClick={() => setOpen(!open)}
          >
            {title} <span aria-hidden="true">{open ? '−' : '+'}</span>
          </button>
        </h2>
        <div id={`${id}-body`} class={open ? 'section-body stack' : 'section-body stack finding-folded'}>
          {ruleInWords === '' ? null : (
            <p>
              <Sentence text={ruleInWords} />
            </p>
          )}
          <GatesFound gates={gates} />
          {method.length === 0 ? (
            <p>Nothing was judged: what stands above is what was recorded.</p>
          ) : (
            method.map((words) => (
              <p key={words}>
                <Sentence text={words} />
              </p>
            ))
          )}
          {noise === null ? null : (
            <p>
              <Sentence
                text={`Measuring error: an unchanged skein differs by ${figure(noise.floor)} ΔE00 in the mean (root mean square ${figure(noise.rms)}, upper 80\u00a0% limit ${figure(noise.upperRms)}); ${noise.from}.`}
              />
            </p>
          )}
          <RawAndNet finding={finding} />
          <p>
            Evidence step {evidenceStep.step}: {evidenceStep.why}.
          </p>
          <p>
            <a href="/method">How every answer of this tool is worked out</a>
          </p>
        </div>
      </section>
      <Note title="Home test, not certified">Claims cover only what was tested.</Note>
    </div>
  )
}
