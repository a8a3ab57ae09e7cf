import './reading.css'
import { useState } from 'preact/hooks'
import type { Reading } from '#api/contract/reading.ts'
import { wearInWords } from '#api/contract/wear-words.ts'
import { readingsOf } from '#web/api/readings.ts'
import { counted, figure, grouped } from '#web/form/number-words.ts'
import { CorrectReading } from '#web/pages/trial/readings/correct-reading.tsx'
import type { ReadingsSeen } from '#web/pages/trial/readings/readings-loaded.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Swatch } from '#web/parts/swatch.tsx'
import { TableBox } from '#web/parts/table-box.tsx'

const shownAtFirst = 24

export type ReadingsListProps = {
  readonly trialId: string
  readonly seen: ReadingsSeen
  readonly onKept: () => void
}

/** Every reading with its sitting. A corrected one stays, with the reason, and no longer counts. */
export function ReadingsList({ trialId, seen, onKept }: ReadingsListProps) {
  const [more, setMore] = useState<{ items: readonly Reading[]; next: string | null } | undefined>()
  const [all, setAll] = useState(false)
  const [correcting, setCorrecting] = useState<string | undefined>()
  const [refused, setRefused] = useState<unknown>()
  const readings = [...seen.readings.items, ...(more?.items ?? [])]
  const next = more === undefined ? seen.readings.next : more.next
  const codes = new Map(seen.skeins.items.map((skein) => [skein.id, skein.code]))
  const sittings = new Map(seen.sittings.items.map((sitting) => [sitting.id, sitting.label]))
  const reasons = new Map(readings.flatMap((it) => (it.supersedesId ? [[it.supersedesId, it.reason]] : [])))
  const chosen = readings.find((reading) => reading.id === correcting)

  const load = (): void => {
    readingsOf(trialId, next ?? undefined).then(
      (page) => setMore({ items: [...(more?.items ?? []), ...page.items], next: page.next }),
      setRefused,
    )
  }
  return (
    <div class="stack">
      <p class="soft">
        {next === null
          ? counted(readings.length, 'reading')
          : `The first ${grouped(readings.length)} readings`}{' '}
        in {counted(new Set(readings.map((it) => it.sittingId)).size, 'sitting')}.
      </p>
      {chosen === undefined ? null : (
        <CorrectReading
          key={chosen.id}
          trialId={trialId}
          reading={chosen}
          code={codes.get(chosen.skeinId) ?? ''}
          onLeave={() => setCorrecting(undefined)}
          onKept={() => {
            setCorrecting(undefined)
            setMore(undefined)
            onKept()
          }}
        />
      )}
      <TableBox name="Readings">
        <thead>
          <tr>
            <th scope="col">skein</th>
            <th scope="col">colour</th>
            <th scope="col">sitting</th>
            <th scope="col">what it had been through</th>
            <th scope="col" class="figure">
              L*
            </th>
            <th scope="col" class="figure">
              a*
            </th>
            <th scope="col" class="figure">
              b*
            </th>
            <th scope="col" class="figure">
              spots
            </th>
            <th scope="col">
              <span class="visually-hidden">correction</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {(all ? readings : readings.slice(0, shownAtFirst)).map((reading) => (
            <tr key={reading.id} class={reading.superseded ? 'aside' : undefined}>
              <th scope="row">{codes.get(reading.skeinId) ?? '…'}</th>
              <td>
                <Swatch size="small" colours={[{ L: reading.meanL, a: reading.meanA, b: reading.meanB }]} />
              </td>
              <td class="reading-words">{sittings.get(reading.sittingId) ?? '…'}</td>
              <td class="reading-words">
                {wearInWords(reading.wear)}
                {reading.wet ? ', wet' : ''}
              </td>
              <td class="figure">{figure(reading.meanL, 1)}</td>
              <td class="figure">{figure(reading.meanA, 1)}</td>
              <td class="figure">{figure(reading.meanB, 1)}</td>
              <td class="figure">{reading.spotsN}</td>
              <td>
                {reading.superseded ? (
                  `corrected: ${reasons.get(reading.id) ?? 'see the later one'}`
                ) : (
                  <Button
                    kind="plain"
                    small
                    name={`Correct: skein ${codes.get(reading.skeinId) ?? ''}, ${sittings.get(reading.sittingId) ?? ''}`}
                    onPress={() => setCorrecting(reading.id)}
                  >
                    Correct
                  </Button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </TableBox>
      <ProblemNote refused={refused} />
      {!all && readings.length > shownAtFirst ? (
        <div class="row">
          <Button onPress={() => setAll(true)}>
            Show the other {grouped(readings.length - shownAtFirst)}
          </Button>
        </div>
      ) : next === null ? null : (
        <div class="row">
          <Button onPress={load}>Show the next readings</Button>
        </div>
      )}
    </div>
  )
}
