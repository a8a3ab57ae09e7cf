import './bench-sheet.css'
import type { DrawnPlan, DrawnVessel } from '#api/contract/plan.ts'
import { isTimeLadder } from '#api/contract/time-ladder.ts'
import type { Factor, Trial } from '#api/contract/trial.ts'
import { BenchCautions } from '#web/pages/trial/bench-cautions.tsx'
import { clockOf, entryOf } from '#web/pages/trial/staggered-words.ts'
import { Section } from '#web/parts/section.tsx'
import { TableBox } from '#web/parts/table-box.tsx'

export type BenchSheetProps = {
  readonly trial: Trial
  readonly factors: readonly Factor[]
  readonly plan: DrawnPlan
}

/** The bench as it was drawn, on the screen and on paper; blank columns are for the pencil. */
export function BenchSheet({ trial, factors, plan }: BenchSheetProps) {
  const varied = factors.map(({ label }) => label.toLowerCase()).join(', ')
  const ladder = factors.find(isTimeLadder)
  const clock = ladder ? clockOf(ladder, { vessel: vesselWord(plan) }) : []
  // Sheets drawn before the times were followed have turns of their own.
  const staggered = ladder !== undefined && plan.sessions.some(hasNoTurns)
  return (
    <Section
      title="Places, drawn by lot"
      says={
        staggered
          ? `Longest in first, all out together; each ${vesselWord(plan)} stands at its place.`
          : `Work in the order of “turn”; each ${vesselWord(plan)} stands at its place.`
      }
      id="bench-sheet"
    >
      <BenchCautions
        vesselKinds={plan.sessions.flatMap(({ vessels }) => vessels.map(({ kind }) => kind))}
        factors={factors}
        held={trial.held}
      />
      {staggered ? (
        <ol class="bench-sheet-clock plain-list" aria-label="Clock of a session">
          {clock.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
      ) : null}
      <div class="bench-sheet">
        {plan.sessions.map((session) => (
          <section key={session.id} class="bench-sheet-session" aria-label={session.label}>
            <h3>
              {session.label}
              <span class="bench-sheet-date"> date</span>
            </h3>
            <TableBox name={`${session.label}, places`}>
              <thead>
                <tr>
                  <th scope="col">place</th>
                  <th scope="col" class="figure">
                    {staggered && hasNoTurns(session) ? 'in at' : 'turn'}
                  </th>
                  <th scope="col">{varied === '' ? 'level' : varied}</th>
                  <th scope="col">skeins</th>
                  <th scope="col" class="bench-sheet-pencil">
                    in
                  </th>
                  <th scope="col" class="bench-sheet-pencil">
                    out
                  </th>
                  <th scope="col" class="bench-sheet-pencil bench-sheet-note">
                    what was different
                  </th>
                </tr>
              </thead>
              <tbody>
                {inPlaces(session.vessels).map((vessel) => (
                  <tr key={vessel.id}>
                    <th scope="row">{vessel.place ?? vessel.label}</th>
                    <td class="figure">{vessel.order ?? (ladder ? entryOf(ladder, vessel.levels) : '')}</td>
                    <td>{levelsOf(vessel)}</td>
                    <td>{skeinsOf(vessel)}</td>
                    <td class="bench-sheet-pencil" />
                    <td class="bench-sheet-pencil" />
                    <td class="bench-sheet-pencil" />
                  </tr>
                ))}
              </tbody>
            </TableBox>
          </section>
        ))}
      </div>
      {plan.balance.length === 0 ? null : <p class="small">{plan.balance.join(' ')}</p>}
      <p class="bench-sheet-seed small soft">
        {plan.seed === null ? '' : `Drawn by lot with the seed ${plan.seed}. `}
        {trial.title}
      </p>
    </Section>
  )
}

function hasNoTurns({ vessels }: DrawnPlan['sessions'][number]): boolean {
  return vessels.every(({ order }) => order === null)
}

/** Places in order; what has none (an envelope in the dark) last. */
function inPlaces(vessels: readonly DrawnVessel[]): DrawnVessel[] {
  return vessels.toSorted((a, b) => Number(a.place ?? Infinity) - Number(b.place ?? Infinity) || 0)
}

function levelsOf({ levels, skeins }: DrawnVessel): string {
  if (levels.length > 0) return levels.map(({ label }) => label).join(', ')
  return [...new Set(skeins.flatMap(({ level }) => level ?? []))].join(', ')
}

function skeinsOf({ skeins }: DrawnVessel): string {
  // The halves of one piece on a light card are one entry: “1-1a, open and foil”.
  const whole = (code: string): string => code.replace(/ (open|foil|dark)$/, '')
  const halves = skeins.some(({ code }) => / foil$/.test(code)) ? ' (open and foil)' : ''
  const codes = skeins.filter(({ role }) => role !== 'blue wool').map(({ code }) => whole(code))
  const wools = skeins.some(({ role }) => role === 'blue wool') ? ['blue wools 1–6'] : []
  return [`${[...new Set(codes)].join(', ')}${halves}`, ...wools].join(', ')
}

function vesselWord({ sessions }: DrawnPlan): string {
  return sessions[0]?.vessels[0]?.kind ?? 'vessel'
}
