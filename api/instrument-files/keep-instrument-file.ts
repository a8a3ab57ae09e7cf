import type { Kysely } from 'kysely'
import type {
  InstrumentFileCheck,
  InstrumentFileKept,
  NewInstrumentFile,
} from '#api/contract/instrument-file.ts'
import { Problem } from '#api/contract/problem.ts'
import { addReadings } from '#api/readings/add-readings.ts'
import { keepAdded } from '#api/records/journal.ts'
import { unsaid } from '#api/records/said.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { type InstrumentReading, instrumentFile } from '#api/science/colour/instrument-file.ts'
import { groupBy } from '#api/science/group-by.ts'
import { sittings } from '#api/sittings/sittings.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { addRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { namesIn } from '#db/tables-kept.ts'
import type { TrialRow } from '#db/trials.ts'

type Checked = InstrumentFileCheck & { readonly bySkein: ReadonlyMap<string, readonly InstrumentReading[]> }

const mostSpots = 50
const mostFaults = 200

/** Reads an instrument’s file against the skeins of a trial; nothing is stored. */
export async function checkInstrumentFile(
  db: Kysely<Database>,
  trial: TrialRow,
  text: string,
): Promise<Checked> {
  const file = instrumentFile(text)
  const { skeins } = await namesIn(db, trial.id)
  const codes = new Map(skeins.map((skein) => [skein.code, skein.id]))
  const faults = [...file.faults]
  const known: { skeinId: string; reading: InstrumentReading }[] = []
  for (const reading of file.readings) {
    const skeinId = codes.get(reading.sampleId)
    if (skeinId === undefined)
      faults.push({
        line: reading.line,
        reason: `No skein of this trial has the code “${reading.sampleId}”.`,
      })
    else known.push({ skeinId, reading })
  }
  const bySkein = new Map(
    [...groupBy(known, (it) => it.skeinId)].map(([skeinId, group]) => [
      skeinId,
      group.map((it) => it.reading),
    ]),
  )
  for (const group of bySkein.values()) {
    const [first] = group
    if (group.length > mostSpots && first)
      faults.push({
        line: first.line,
        reason: `“${first.sampleId}” stands in ${group.length} rows; a reading has at most ${mostSpots} spots.`,
      })
  }
  faults.sort((a, b) => a.line - b.line)
  return {
    readings: bySkein.size,
    spots: known.length,
    from: file.from,
    keywords: { ...file.keywords },
    faults: faults.slice(0, mostFaults),
    notes: notesOf(file.from),
    bySkein,
  }
}

/** Keeps the readings of a file, all of them or none. */
export async function keepInstrumentFile(
  db: Kysely<Database>,
  trial: TrialRow,
  { text, sittingId, label, instrumentId, wear }: NewInstrumentFile,
): Promise<InstrumentFileKept> {
  return inTransaction(db, async (tx) => {
    const { faults, bySkein, ...said } = await checkInstrumentFile(tx, trial, text)
    if (faults.length > 0 || bySkein.size === 0) {
      throw new Problem(
        'at-fault',
        'This file cannot be kept as it is; nothing was stored.',
        faults.length > 0
          ? faults.map(({ line, reason }) => ({ pointer: '#/text', detail: `Line ${line}: ${reason}` }))
          : [{ pointer: '#/text', detail: 'There are no readings in this file.' }],
      )
    }
    const fromSpectrum = said.from === 'spectrum'
    const sitting = sittingId ?? (await newSitting())
    const readings = [...bySkein].map(([skeinId, group]) => ({
      skeinId,
      sittingId: sitting,
      ...(wear === undefined ? {} : { wear }),
      spots: group.map(({ lab }) => ({ l: lab.L, a: lab.a, b: lab.b })),
    }))
    await addReadings(tx, trial.id, readings, { at: () => '#/text' })
    await deriveResults(tx, [...bySkein.keys()])
    return { ...said, sittingId: sitting }

    async function newSitting(): Promise<string> {
      const { row, made } = await addRow(tx, 'sitting', {
        trialId: trial.id,
        method: 'instrument',
        label: label ?? 'from an instrument’s file',
        instrumentId: instrumentId ?? null,
        illuminant: fromSpectrum ? 'D65' : null,
        observer: fromSpectrum ? '10°' : null,
      })
      await keepAdded(tx, sittings, { rows: [row], madeIds: new Set(made ? [row.id] : []) }, { said: unsaid })
      return row.id
    }
  })
}

function notesOf(from: InstrumentFileCheck['from']): string[] {
  if (from === 'spectrum') return ['L*a*b* was worked out from the spectra, for D65 and the 10° observer.']
  if (from === 'lab')
    return ['L*a*b* was taken as printed: look whether the instrument was set to D65 and 10°.']
  return []
}
