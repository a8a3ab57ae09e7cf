import type { Finding } from '#api/contract/finding.ts'
import { Sentence } from '#web/parts/delta-e.tsx'

const names: Readonly<Record<string, string>> = {
  rule: 'Rule',
  plan: 'Plan',
  controls: 'Controls',
  noise: 'Measuring error',
  alike: 'Way of measuring',
  units: 'Counting',
  losses: 'Losses',
  journal: 'Changes',
  reference: 'Reference',
}

/** What each gate found that an answer has to pass: a closed one first says so. */
export function GatesFound({ gates }: Pick<Finding, 'gates'>) {
  if (gates.length === 0) return null
  return (
    <div>
      <h3>Gates</h3>
      <dl class="finding-gates">
        {gates.map(({ gate, open, says }) => (
          <div key={says}>
            <dt>{names[gate] ?? gate}</dt>
            <dd>
              {open ? null : <strong>Not passed: </strong>}
              <Sentence text={says} />
            </dd>
          </div>
        ))}
      </dl>
    </div>
  )
}
