import '#web/charts/step-ruler.css'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { Section } from '#web/parts/section.tsx'
import { LimitedResult, Outside, TableBox } from '#web/parts/table-box.tsx'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'

type Cell = { readonly words: string; readonly outside: boolean }
type TableStep = {
  readonly key: string
  readonly label: string
  readonly chosen: boolean
  readonly afterStop: boolean
  readonly verdict: Verdict | null
  readonly answer: string
  /** One for each column. */
  readonly cells: readonly Cell[]
}

export type StepTableProps = {
  readonly says: string
  /** What is varied: “Vinegar”. */
  readonly axisLabel: string
  readonly columns: readonly { readonly label: string; readonly short: string }[]
  readonly steps: readonly TableStep[]
}

/** The rule, step by step, where no interval decides: a table, and on a phone a card for each step. */
export function StepTable({ says, axisLabel, columns, steps }: StepTableProps) {
  const anyOutside = steps.some(({ cells }) => cells.some(({ outside }) => outside))
  return (
    <Section title="The rule, step by step" says={says}>
      <div class="step-ruler-wide">
        <TableBox name="The rule, step by step">
          <thead>
            <tr>
              <th scope="col">{axisLabel}</th>
              {columns.map(({ label }) => (
                <th key={label} scope="col" class="figure step-table-head">
                  {label}
                </th>
              ))}
              <th scope="col" class="step-table-answer">
                answer
              </th>
            </tr>
          </thead>
          <tbody>
            {steps.map((step) => (
              <tr key={step.key} class={step.chosen ? 'chosen' : step.afterStop ? 'aside' : undefined}>
                <th scope="row">{step.label}</th>
                {step.cells.map((cell, column) => (
                  <td key={columns[column]?.label} class="figure">
                    <LimitedResult {...cell} />
                  </td>
                ))}
                <td class="step-ruler-answer step-table-answer">
                  <Answer step={step} />
                </td>
              </tr>
            ))}
          </tbody>
        </TableBox>
        {anyOutside ? <Key /> : null}
      </div>
      <div class="step-cards">
        <ol class="plain-list">
          {steps.map((step) => (
            <li key={step.key} class={step.chosen ? 'step-card step-card-chosen' : 'step-card'}>
              <p class="step-card-head">
                <strong>{step.label}</strong>
                <Answer step={step} />
              </p>
              <p class="step-card-foot">
                <span>
                  {step.cells.map((cell, column) =>
                    cell.words === '–' ? null : (
                      <span key={columns[column]?.label}>
                        {column === 0 ? '' : ' · '}
                        <span class="step-table-item">
                          {columns[column]?.short} <LimitedResult {...cell} />
                        </span>
                      </span>
                    ),
                  )}
                </span>
              </p>
            </li>
          ))}
        </ol>
        {anyOutside ? <Key /> : null}
      </div>
    </Section>
  )
}

function Answer({ step: { verdict, answer } }: { readonly step: TableStep }) {
  return (
    <span>
      {verdict === null ? (
        <span class="step-ruler-no-mark" />
      ) : (
        <VerdictMark verdict={verdict} scale={0.84} />
      )}
      <span>{answer}</span>
    </span>
  )
}

function Key() {
  return (
    <p class="soft small step-ruler-key">
      <Outside>3</Outside> underlined: outside the locked limit.
    </p>
  )
}
