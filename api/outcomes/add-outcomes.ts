import type { Kysely } from 'kysely'
import type { NewOutcome } from '#api/contract/outcome.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import type { Fault } from '#api/contract/problem.ts'
import { type Adding, inItems, refuseFaults } from '#api/records/adding.ts'
import { correctionOf, supersede } from '#api/records/supersede.ts'
import { wearsAt } from '#api/results/wears-at.ts'
import { gradeNumber, grades } from '#api/science/fastness/grades.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type OutcomeToAdd = Partial<NewOutcome> & Pick<NewOutcome, 'kind'>

/** What tests change: their wear is taken from the exposures when it is not entered. */
const worn = new Set(['dE00', 'change grade', 'staining', 'staining dE76'])

/** Writes outcomes of skeins and vessels. A grade may come as its text, “3-4”. */
export async function addOutcomes(
  tx: Kysely<Database>,
  trialId: string,
  outcomes: readonly OutcomeToAdd[],
  { at = inItems }: Adding = {},
): Promise<Added<'outcome'>> {
  refuseFaults(outcomes.flatMap((outcome, index) => faultsOfOutcome(outcome, at(index))))
  await refuseStrangers(
    tx,
    trialId,
    outcomes.flatMap((outcome, index) => [
      { table: 'skein' as const, id: outcome.skeinId, pointer: `${at(index)}/skeinId` },
      { table: 'vessel' as const, id: outcome.vesselId, pointer: `${at(index)}/vesselId` },
      { table: 'skein' as const, id: outcome.companionId, pointer: `${at(index)}/companionId` },
      { table: 'sitting' as const, id: outcome.sittingId, pointer: `${at(index)}/sittingId` },
    ]),
  )
  const wears = await wearsOf(tx, outcomes, at)
  const rows = outcomes.map((outcome, index) => ({
    ...correctionOf(outcome),
    value: numberIn(outcome) ?? 0,
    wear: wears[index] ?? {},
  }))
  await supersede(tx, 'outcome', rows, { at })
  return addRows(tx, 'outcome', rows, { at, derived: ['wear'] })
}

async function wearsOf(
  tx: Kysely<Database>,
  outcomes: readonly OutcomeToAdd[],
  at: (index: number) => string,
) {
  const asked = outcomes.flatMap((outcome, index) =>
    outcome.skeinId && worn.has(outcome.kind) ? [{ outcome, skeinId: outcome.skeinId, index }] : [],
  )
  const { kept, faults } = await wearsAt(
    tx,
    asked.map(({ outcome: { wear, takenAt }, skeinId }) => ({
      skeinId,
      wear,
      at: takenAt ? new Date(takenAt) : undefined,
    })),
    (place) => at(asked[place]?.index ?? 0),
  )
  refuseFaults(faults)
  const wears = outcomes.map((outcome) => outcome.wear ?? {})
  for (const [place, { index }] of asked.entries()) wears[index] = kept[place]?.wear ?? {}
  return wears
}

function numberIn({ kind, value, text }: OutcomeToAdd): number | undefined {
  if (value !== undefined) return value
  const isGrade = outcomeKind(kind).scale === 'grade' && text && (grades as readonly string[]).includes(text)
  return isGrade ? gradeNumber(text) : undefined
}

function faultsOfOutcome(outcome: OutcomeToAdd, pointer: string): Fault[] {
  const faults: Fault[] = []
  if (Boolean(outcome.skeinId) === Boolean(outcome.vesselId))
    faults.push({ pointer, detail: 'An outcome is of one thing: name a skein or a vessel.' })
  const { label, scale, min = -Infinity, max = Infinity } = outcomeKind(outcome.kind)
  const value = numberIn(outcome)
  if (value === undefined) {
    const how = scale === 'grade' ? `one of ${grades.join(', ')}, or its number` : 'a number'
    return [...faults, { pointer: `${pointer}/value`, detail: `Give ${label} as ${how}.` }]
  }
  if (value < min || value > max)
    faults.push({ pointer: `${pointer}/value`, detail: `${label} ${value} is outside ${min}–${max}.` })
  else if ((scale === 'grade' || scale === 'steps') && !Number.isInteger(value * 2))
    faults.push({ pointer: `${pointer}/value`, detail: `${label} goes in halves; ${value} was read.` })
  else if (scale === 'count' && !Number.isInteger(value))
    faults.push({ pointer: `${pointer}/value`, detail: `${label} is a whole number; ${value} was read.` })
  return faults
}
