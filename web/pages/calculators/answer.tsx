import './calculators.css'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { listed } from '#web/form/number-words.ts'
import type { Holding } from '#web/pages/calculators/held-with.ts'
import { UseInTrial } from '#web/pages/calculators/use-in-trial.tsx'
import { Button } from '#web/parts/button.tsx'
import { Section } from '#web/parts/section.tsx'

export type AnswerProps = {
  /** Take, Start pH, The difference … */
  readonly title: string
  /** What is still missing; while there is something, it says what it waits for. */
  readonly missing: readonly string[]
  /** The answer as text, for the clipboard. */
  readonly copy?: string | undefined
  /** What a trial can hold the same of it. */
  readonly holds?: readonly Holding[]
  readonly children: ComponentChildren
}

/** The answer of a calculator, on paper: `<Answer title="Take" missing={missing} copy="dye powder 3.4 g">…</Answer>` */
export function Answer({ title, missing, copy, holds, children }: AnswerProps) {
  return (
    <div class="answer">
      <Section title={title} onPaper>
        {missing.length > 0 ? (
          <p class="answer-figure answer-waits" role="status">
            Waits for {listed(missing)}
          </p>
        ) : (
          <>
            {children}
            <div class="answer-do">
              {copy === undefined ? null : <Copy text={copy} />}
              {holds === undefined ? null : <UseInTrial holds={holds} />}
            </div>
          </>
        )}
      </Section>
    </div>
  )
}

function Copy({ text }: { readonly text: string }) {
  const [said, setSaid] = useState<{ readonly of: string; readonly words: string } | undefined>()
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text)
      setSaid({ of: text, words: 'Copied.' })
    } catch {
      // Over plain http from another machine there is no clipboard.
      setSaid({ of: text, words: 'This browser keeps its clipboard shut here. Mark and copy by hand:' })
    }
  }
  const shown = said?.of === text ? said.words : ''
  return (
    <div class="answer-copy">
      <Button onPress={() => void copy()}>Copy</Button>
      <span role="status" class="soft">
        {shown}
      </span>
      {shown === '' || shown === 'Copied.' ? null : <pre class="answer-text">{text}</pre>}
    </div>
  )
}

export type TakeLine = { readonly words: string; readonly amount: string; readonly unit: string }

/** What to measure out, a line each: `<Takes lines={[{ words: 'dye powder', amount: '3.4', unit: 'g' }]} />` */
export function Takes({ lines }: { readonly lines: readonly TakeLine[] }) {
  return (
    <dl class="takes">
      {lines.map(({ words, amount, unit }) => (
        <div key={words}>
          <dt>{words}</dt>
          <dd>
            <span class="answer-figure">{amount}</span> {unit}
          </dd>
        </div>
      ))}
    </dl>
  )
}

/** The same lines as text. */
export function linesAsText(title: string, lines: readonly TakeLine[]): string {
  return [title, ...lines.map(({ words, amount, unit }) => `${words}: ${amount} ${unit}`.trim())].join('\n')
}
