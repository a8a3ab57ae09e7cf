import './home-busy.css'
import type { Due, Home, NewestFinding } from '#api/contract/home.ts'
import { weekdayAndDay } from '#web/form/date-words.ts'
import { dueWords } from '#web/pages/due-words.ts'
import { LinkButton } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { DueRow } from '#web/parts/due-row.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { PairTile } from '#web/parts/pair-tile.tsx'
import { Section } from '#web/parts/section.tsx'
import { TrialRow } from '#web/parts/trial-row.tsx'
import { VerdictBlock } from '#web/parts/verdict-block.tsx'

/** Home when something is on the bench: what is due, the open trials, the newest finding. */
export function HomeBusy({ home, now }: { readonly home: Home; readonly now: Date }) {
  const { due, open, newest } = home
  const first = due.findIndex(({ day }) => dueWords(day, now).now)
  return (
    <div class="stack">
      <div class="home-head">
        <PageTitle name="Home">{weekdayAndDay(now)}</PageTitle>
        <LinkButton kind="do" href="/start">
          Start a trial
        </LinkButton>
      </div>
      <div class={newest === null ? 'stack-wide' : 'body-and-margin home-columns'}>
        <div class="home-due">
          <Section title="Due">
            {due.length === 0 ? (
              <p class="soft">Nothing is due.</p>
            ) : (
              <ul class="due-rows plain-list">
                {due.map((it, place) => (
                  <DueLine
                    key={`${it.trialId} ${it.sessionId} ${it.day}`}
                    due={it}
                    now={now}
                    first={place === first}
                  />
                ))}
              </ul>
            )}
          </Section>
        </div>
        {newest === null ? null : (
          <div class="home-newest">
            <Newest finding={newest} />
          </div>
        )}
        <div class="home-open">
          <Section title="Open trials">
            <ul class="trial-rows plain-list">
              {open.map(({ trial, sessionWords, skeinsRead, skeins, swatches, verdict, words }) => (
                <TrialRow
                  key={trial.id}
                  href={`/trials/${trial.id}`}
                  question={trial.question}
                  counts={[
                    sessionWords,
                    ...(skeins === 0 ? [] : [`${skeinsRead} of ${skeins} skeins read`]),
                    ...(trial.invented ? ['invented'] : []),
                  ].join('\u00a0· ')}
                  colours={swatches}
                  verdict={verdict ?? undefined}
                  state={words}
                />
              ))}
            </ul>
          </Section>
        </div>
      </div>
    </div>
  )
}

const places: Readonly<Record<Due['kind'], (trialId: string) => string>> = {
  light: (id) => `/trials/${id}/readings`,
  wash: (id) => `/trials/${id}/readings`,
  read: (id) => `/trials/${id}/readings`,
  session: (id) => `/trials/${id}/plan#bench-sheet`,
}

function DueLine({ due, now, first }: { readonly due: Due; readonly now: Date; readonly first: boolean }) {
  const words = dueWords(due.day, now)
  return (
    <DueRow
      now={words.now}
      day={words.day}
      what={due.what}
      of={due.of}
      late={words.late}
      button={
        <LinkButton
          kind={first ? 'do' : 'box'}
          small
          href={places[due.kind](due.trialId)}
          name={`${due.button}: ${due.what}, ${due.of}`}
        >
          {due.button}
        </LinkButton>
      }
    />
  )
}

function Newest({ finding }: { readonly finding: NewestFinding }) {
  const { pair, answer, headline, lead, counts, after, question, trialId, invented } = finding
  const { alsoTried, withinLevelId } = finding
  return (
    <Section title="Newest finding" onPaper>
      <div class="stack">
        {pair === null ? null : <PairTile pair={pair} large afterWord={`after ${after}`} />}
        <VerdictBlock
          small
          verdict={answer}
          sentence={headline}
          lead={<Sentence text={lead} />}
          counts={<Sentence text={counts} />}
        />
        {alsoTried.length === 0 ? null : <p class="small">Also tried: {alsoTried.join(' ')}</p>}
        <p class="small soft">
          {question}
          {invented ? ' (invented data)' : ''}
        </p>
        <p>
          <a
            class="home-findings"
            href={`/trials/${trialId}/findings${withinLevelId === null ? '' : `?within=${withinLevelId}`}`}
          >
            Open the findings
          </a>
        </p>
      </div>
    </Section>
  )
}
