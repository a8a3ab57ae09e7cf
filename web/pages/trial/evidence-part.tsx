import { useEffect, useRef, useState } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import type { DraftSheet, EvidenceSheet } from '#api/contract/evidence.ts'
import { draftSheetOf, publishSheet, sheetsOf } from '#web/api/evidence.ts'
import { recordVerdict } from '#web/api/findings.ts'
import { dayAndTime } from '#web/form/date-words.ts'
import { SheetFacts } from '#web/pages/trial/evidence/sheet-facts.tsx'
import { withinQuery } from '#web/pages/trial/findings/finding-words.ts'
import { LevelChoice } from '#web/pages/trial/level-choice.tsx'
import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { Button, LinkButton } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { EmptyState } from '#web/parts/empty-state.tsx'
import { Note } from '#web/parts/note.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'
import { VerdictBlock } from '#web/parts/verdict-block.tsx'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** The evidence of a trial: what its sheet says now; its verdict is recorded first, then the sheet is published for good. */
export function EvidencePart({ trial }: TrialPartProps) {
  const { query, route } = useLocation()
  const within = query.within === undefined || query.within === '' ? undefined : query.within
  const loaded = useLoaded(`evidence of ${trial.id}`, async (signal) => {
    const [draft, sheets] = await Promise.all([
      draftSheetOf(trial.id, within, signal),
      sheetsOf(trial.id, signal),
    ])
    return { draft, sheets }
  })
  // Another part is read while the one before still stands, so that the choice keeps its place.
  const shown = useRef(within)
  useEffect(() => {
    if (shown.current !== within) loaded.again()
    shown.current = within
  }, [within, loaded.again])
  return (
    <WhenLoaded loaded={loaded}>
      {({ draft, sheets }) => (
        <Evidence
          trialId={trial.id}
          draft={draft}
          sheets={sheets}
          again={loaded.again}
          lookWithin={(part) => route(`/trials/${trial.id}/evidence${withinQuery(part)}`, true)}
          asked={within}
        />
      )}
    </WhenLoaded>
  )
}

type EvidenceProps = {
  readonly trialId: string
  readonly draft: DraftSheet
  readonly sheets: readonly EvidenceSheet[]
  readonly again: () => void
  /** The part of several that is asked for; all of them together unless given. */
  readonly asked: string | undefined
  readonly lookWithin: (within: string | undefined) => void
}

function Evidence({ trialId, draft, sheets, again, asked, lookWithin }: EvidenceProps) {
  const [doing, setDoing] = useState<'record' | 'publish' | undefined>()
  const [refused, setRefused] = useState<unknown>()
  const { sheet, hasVerdict, path, within, recordedAt, refusedToRecord, refusedToPublish } = draft
  const choice =
    within === null ? null : (
      <LevelChoice factor={within.factor} levels={within.levels} chosen={asked} onChoose={lookWithin} />
    )
  if (!hasVerdict) {
    return (
      <div class="stack">
        {choice}
        <EmptyState title={<h2>No sheet yet</h2>}>
          A sheet is made from a verdict. <Sentence text={sheet.lead} />
        </EmptyState>
      </div>
    )
  }
  const act = async (what: 'record' | 'publish') => {
    setDoing(what)
    setRefused(undefined)
    try {
      if (what === 'record') await recordVerdict(trialId, asked)
      else await publishSheet(trialId, asked)
      again()
    } catch (error) {
      setRefused(error)
    } finally {
      setDoing(undefined)
    }
  }
  const why = (recordedAt === null ? refusedToRecord : null) ?? refusedToPublish
  return (
    <div class="body-and-margin">
      <div class="stack">
        {choice}
        <VerdictBlock
          verdict={sheet.answer}
          sentence={sheet.headline}
          lead={<Sentence text={sheet.lead} />}
          buttons={
            <>
              {recordedAt === null ? (
                <Button
                  kind={refusedToRecord === null ? 'do' : 'box'}
                  onPress={() => void act('record')}
                  waitsFor={refusedToRecord?.waitsFor}
                  busy={doing === 'record' ? 'Recording …' : undefined}
                >
                  Record the verdict
                </Button>
              ) : (
                <Button
                  kind={refusedToPublish === null ? 'do' : 'box'}
                  onPress={() => void act('publish')}
                  waitsFor={refusedToPublish?.waitsFor}
                  busy={doing === 'publish' ? 'Publishing …' : undefined}
                >
                  Publish the sheet
                </Button>
              )}
              <LinkButton href={path} beside>
                Print
              </LinkButton>
            </>
          }
        />
        <p class="soft" role="status">
          {recordedAt === null ? '' : `Verdict recorded ${dayAndTime(new Date(recordedAt))}. `}
          {why === null ? '' : why.says}
          {recordedAt !== null && why === null ? 'A published sheet never changes again.' : ''}
        </p>
        <ProblemNote refused={refused} />
        <Section title="What the sheet says">
          <SheetFacts sheet={sheet} />
        </Section>
        <Section
          title="Published sheets"
          says="A published sheet keeps its words, its numbers and its checksum; a later one stands beside it."
        >
          {sheets.length === 0 ? <p>None yet.</p> : <PublishedSheets sheets={sheets} />}
        </Section>
      </div>
      <aside class="stack" aria-label="Notes">
        {sheet.invented ? (
          <Note kind="guard" title="Invented data">
            This trial belongs to the example studio. Its sheet says so, and is no evidence.
          </Note>
        ) : null}
        <Note title="Home test, not certified">Claims cover only what was tested.</Note>
        <Note title="Words to leave out">
          “Colourfast” alone, “guaranteed”, “certified”, “non-toxic”: no home test shows them. Food-grade is
          the colour as bought, not the yarn.
        </Note>
        <Note title="The law where you sell">
          Rules for fibre, origin and care labels differ by country. This is not legal advice.
        </Note>
      </aside>
    </div>
  )
}

function PublishedSheets({ sheets }: { readonly sheets: readonly EvidenceSheet[] }) {
  return (
    <ul class="plain-list">
      {sheets.map((sheet) => (
        <li key={sheet.id}>
          <a href={sheet.path} target="_blank" rel="noopener">
            {sheet.headline}
          </a>{' '}
          <span class="soft">
            {sheet.step}, published {dayAndTime(new Date(sheet.madeAt))}, checksum {sheet.sha256.slice(0, 8)}
            {sheet.checksumMatches ? '' : ', which does not match what is stored'}
          </span>
          {sheet.mark === null ? null : (
            <p>
              <Sentence text={sheet.mark} />
            </p>
          )}
        </li>
      ))}
    </ul>
  )
}
