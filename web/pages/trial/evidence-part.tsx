import { useEffect, useRef, useState } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import type { DraftSheet, EvidenceSheet } from '#api/contract/evidence.ts'
import { draftSheetOf, freezeSheet, sheetsOf } from '#web/api/evidence.ts'
import { dayAndTime } from '#web/form/date-words.ts'
import { SheetFacts } from '#web/pages/trial/evidence/sheet-facts.tsx'
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

/** The evidence of a trial: what its sheet says now, printing it, and freezing it for good. */
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
  // Another level of the second factor is read while the one before still stands, so that the choice keeps its place.
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
          lookWithin={(levelId) => route(`/trials/${trial.id}/evidence?within=${levelId}`, true)}
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
  /** The level of the second factor that is asked for, if there is one. */
  readonly asked: string | undefined
  readonly lookWithin: (levelId: string) => void
}

function Evidence({ trialId, draft, sheets, again, asked, lookWithin }: EvidenceProps) {
  const [freezing, setFreezing] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  const { sheet, hasVerdict, path, within } = draft
  const choice =
    within === null ? null : (
      <LevelChoice
        factor={within.factor}
        levels={within.levels}
        chosen={asked ?? within.levelId}
        onChoose={lookWithin}
      />
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
  const freeze = async () => {
    setFreezing(true)
    setRefused(undefined)
    try {
      await freezeSheet(trialId, within?.levelId)
      again()
    } catch (error) {
      setRefused(error)
    } finally {
      setFreezing(false)
    }
  }
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
              <LinkButton kind="do" href={path} beside>
                Print
              </LinkButton>
              <Button onPress={() => void freeze()} busy={freezing ? 'Freezing …' : undefined}>
                Freeze this sheet
              </Button>
            </>
          }
        />
        <ProblemNote refused={refused} />
        <Section title="What the sheet says">
          <SheetFacts sheet={sheet} />
        </Section>
        <Section
          title="Frozen sheets"
          says="A frozen sheet keeps its words, its numbers and its checksum; a later one stands beside it."
        >
          {sheets.length === 0 ? <p>None yet.</p> : <FrozenSheets sheets={sheets} />}
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

function FrozenSheets({ sheets }: { readonly sheets: readonly EvidenceSheet[] }) {
  return (
    <ul class="plain-list">
      {sheets.map((sheet) => (
        <li key={sheet.id}>
          <a href={sheet.path} target="_blank" rel="noopener">
            {sheet.headline}
          </a>{' '}
          <span class="soft">
            {sheet.step}, frozen {dayAndTime(new Date(sheet.madeAt))}, checksum {sheet.sha256.slice(0, 8)}
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
