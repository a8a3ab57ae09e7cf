import './sheet-facts.css'
import type { Sheet } from '#api/contract/evidence.ts'
import { Sentence } from '#web/parts/delta-e.tsx'
import { type EvidenceStep, EvidenceSteps } from '#web/parts/evidence-steps.tsx'

const steps: Readonly<Record<Sheet['evidence']['step'], EvidenceStep>> = { E0: 0, E1: 1, E2: 2, E3: 3, E4: 4 }

/** What the sheet says, in its order; the worst result is never left out. */
export function SheetFacts({ sheet }: { readonly sheet: Sheet }) {
  const facts = [
    ['What', sheet.what],
    ['Test', sheet.test],
    ['How many', sheet.howMany],
    ['Worst result', sheet.worst],
    ...(sheet.alsoTried ? [['Also tried', sheet.alsoTried] as const] : []),
    ['Not tested', sheet.notTested],
  ] as const
  return (
    <dl class="sheet-facts">
      {facts.map(([term, words]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>
            {term === 'Worst result' ? (
              <strong>
                <Sentence text={words} />
              </strong>
            ) : (
              <Sentence text={words} />
            )}
          </dd>
        </div>
      ))}
      <div>
        <dt>Evidence</dt>
        <dd>
          <EvidenceSteps reached={steps[sheet.evidence.step]}>{sheet.evidence.why}</EvidenceSteps>
        </dd>
      </div>
    </dl>
  )
}
