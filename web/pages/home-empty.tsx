import './home-empty.css'
import { useState } from 'preact/hooks'
import type { Lab } from '#api/science/colour/lab.ts'
import { ask } from '#web/api/client.ts'
import { Button, LinkButton } from '#web/parts/button.tsx'
import { EmptyState } from '#web/parts/empty-state.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'
import { Swatch } from '#web/parts/swatch.tsx'

/** Four doubts that most dyers have, each the beginning of a plan. */
const doubts = [
  { pattern: 'P1', question: 'How short can steaming be?', plan: 'a ladder of steam times, four sessions' },
  {
    pattern: 'P2',
    question: 'How much acid does my water need?',
    plan: 'a ladder of acid on each base, three sessions',
  },
  {
    pattern: 'P3',
    question: 'Is this colourway colourfast?',
    plan: 'three dye lots, five washes, two graders',
  },
  { pattern: 'P5', question: 'What does my window do?', plan: 'a light card, read for ten weeks' },
] as const

/** The example studio’s steam ladder after three washes, 75 minutes down to none: invented data, as all of that studio. */
const exampleLadder: readonly Lab[] = [
  { L: 37.9, a: -14.3, b: -13.5 },
  { L: 37.9, a: -14.2, b: -13.7 },
  { L: 37.8, a: -14.1, b: -13.1 },
  { L: 40.4, a: -12.9, b: -11.1 },
  { L: 45.6, a: -9.5, b: -5.9 },
  { L: 57.4, a: -2.3, b: 6.1 },
]

/** Home before the first trial: doubts to start with, or the example studio, to look around. */
export function HomeEmpty({ onOpened }: { readonly onOpened: () => void }) {
  const [busy, setBusy] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  const open = async (): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    try {
      await ask('/api/example-studio', { method: 'POST' })
      onOpened()
    } catch (thrown) {
      setRefused(thrown)
      setBusy(false)
    }
  }
  return (
    <div class="stack-wide">
      <EmptyState title={<PageTitle>Nothing on the bench yet</PageTitle>}>
        Start with a doubt. Runs Clear makes it a side-by-side trial, walks with you through stove, rinse and
        washing, and answers with what the skeins say, or says that it is not settled.
      </EmptyState>
      <div class="body-and-margin">
        <Section title="A doubt to start with">
          <ul class="home-doubts plain-list">
            {doubts.map(({ pattern, question, plan }) => (
              <li key={pattern}>
                <a href={`/start?pattern=${pattern}`}>{question}</a>
                <p class="soft small">{plan}</p>
              </li>
            ))}
          </ul>
          <div class="home-own">
            <LinkButton kind="do" href="/start">
              Ask my own question
            </LinkButton>
          </div>
        </Section>
        <Section title="Or look around first">
          <Swatch colours={exampleLadder} size="band" />
          <p class="home-example">
            The example studio is a hillside dye shed with finished trials. They are invented, and marked so
            wherever they stand.
          </p>
          <ProblemNote refused={refused} />
          <div class="home-own">
            <Button onPress={() => void open()} busy={busy ? 'Opening …' : undefined}>
              Open the example studio
            </Button>
          </div>
        </Section>
      </div>
    </div>
  )
}
