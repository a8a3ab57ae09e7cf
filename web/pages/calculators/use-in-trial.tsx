import { useState } from 'preact/hooks'
import type { Trial } from '#api/contract/trial.ts'
import { changeTrial, openTrialsOf, trialOf } from '#web/api/trials.ts'
import { Choice } from '#web/form/choice.tsx'
import { type Holding, heldWith } from '#web/pages/calculators/held-with.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

/** Writes what was worked out into what a trial holds the same: `<UseInTrial holds={[{ key: 'depth', value: '1 %' }]} />` */
export function UseInTrial({ holds }: { readonly holds: readonly Holding[] }) {
  const [trials, setTrials] = useState<readonly Trial[] | undefined>()
  const [chosen, setChosen] = useState<string | undefined>()
  const [busy, setBusy] = useState<string | undefined>()
  const [refused, setRefused] = useState<unknown>()
  const [kept, setKept] = useState<{ readonly trial: Trial; readonly of: string } | undefined>()
  const said = holds.map(({ key, value }) => `${key} ${value}`).join(', ')
  const id = chosen ?? trials?.[0]?.id

  const doing = async (words: string, work: () => Promise<void>): Promise<void> => {
    setBusy(words)
    setRefused(undefined)
    try {
      await work()
    } catch (thrown) {
      setRefused(thrown)
    }
    setBusy(undefined)
  }
  const look = () => doing('Reading …', async () => setTrials(await openTrialsOf()))
  const keep = (trialId: string) =>
    doing('Keeping …', async () => {
      // Read again first: somebody may have changed it since the list was read.
      const now = await trialOf(trialId)
      setKept({ trial: await changeTrial(now, { held: heldWith(now.held, holds) }), of: said })
    })

  return (
    <div class="answer-use">
      {trials === undefined ? (
        <Button busy={busy} onPress={() => void look()}>
          Use in a trial
        </Button>
      ) : id === undefined ? (
        <p>
          No trial is open. <a href="/start">Start a trial</a>.
        </p>
      ) : (
        <>
          <Choice
            name="trial"
            label="Hold it the same in"
            options={trials.map(({ id: value, title }) => ({ value, words: title }))}
            value={id}
            onChoose={setChosen}
          />
          <div class="row">
            <Button busy={busy} onPress={() => void keep(id)}>
              Hold it the same
            </Button>
            <span class="soft">{said}</span>
          </div>
        </>
      )}
      <p role="status">
        {kept?.of === said ? (
          <>
            Kept in <a href={`/trials/${kept.trial.id}/plan`}>{kept.trial.title}</a>.
          </>
        ) : null}
      </p>
      <ProblemNote refused={refused} />
    </div>
  )
}
