import { randomUUID } from 'node:crypto'
import type { Kysely } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import type { CellFault, NewTable, TableCheck, TableKept } from '#api/contract/table.ts'
import { readingRows } from '#api/readings/add-readings.ts'
import { type Said, unsaid } from '#api/records/said.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { addFactor } from '#api/trials/add-factor.ts'
import { insertRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { giveOtherwise } from '#db/give-otherwise.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { begunTrials } from '#db/journal.ts'
import { knownPieces, tellFates } from '#db/known-pieces.ts'
import { findRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { namesIn } from '#db/tables-kept.ts'
import { type FactorWithLevels, factorsOf, holdTrial, type TrialRow } from '#db/trials.ts'
import { trustReferences } from '#db/trust-references.ts'
import { type CheckedTable, checkTable, levelsMet, rawTable, rowsToKeep } from './check-table.ts'
import { type Followed, keepLaidOut } from './keep-laid-out.ts'
import { type LaidOut, nameOfSession } from './laid-out.ts'
import { type Around, layOut, nameOfLevel } from './lay-out.ts'
import { end, say } from './progress.ts'
import type { RowValues } from './row-values.ts'

/**
 * Keeps a table: all of its rows or, by explicit choice, the ready ones with the rest listed. In one transaction: what
 * goes wrong leaves nothing behind. The same import under the same id is harmless.
 */
export async function keepTable(
  db: Kysely<Database>,
  trial: TrialRow,
  table: NewTable,
  said: Said = unsaid,
): Promise<TableKept> {
  const importId = table.id ?? randomUUID()
  try {
    say(importId, 'reading', 0, 1)
    const raw = await rawTable(table)
    return await inTransaction(db, async (tx) => {
      await holdTrial(tx, trial.id)
      await refuseStrangers(tx, trial.id, [
        { table: 'instrument', id: table.instrumentId, pointer: '#/instrumentId' },
      ])
      const before = table.id ? await findRow(tx, 'tableImport', table.id) : undefined
      if (before) return repeated(before, trial)
      const factors = await factorsOf(tx, trial.id)
      const names = await namesIn(tx, trial.id)
      const checked = await checkTable(table, {
        factors,
        raw,
        taken: new Set(names.skeins.map((skein) => skein.code)),
        known: (codes) => knownPieces(tx, trial.id, codes),
        seen: (rows, of) => say(importId, 'checking', rows, of),
      })
      refuseUnfinished(checked, table)
      const rows = rowsToKeep(checked, table.keep)
      const all = await withNewFactors(tx, trial.id, checked, factors)
      const laidOut = layOut(rows, {
        columns: checked.columns,
        answers: table,
        around: aroundOf(trial.id, names, all),
      })
      const begun = (await begunTrials(tx, [trial.id])).has(trial.id)
      const followed = await write(tx, trial.id, laidOut, (share) =>
        say(importId, 'keeping', Math.round(rows.length * share), rows.length),
      )
      if (begun) await keepLaidOut(tx, laidOut, followed, said)
      const leftOut = table.keep === 'ready' ? firstFaults(checked) : []
      const makes = { ...counted(laidOut), levels: levelsMet(checked) }
      await tx
        .insertInto('tableImport')
        .values({
          id: importId,
          trialId: trial.id,
          columns: JSON.stringify(checked.columns),
          answers: JSON.stringify({ ...answersOf(table), makes }),
          rowsN: checked.rows,
          keptN: rows.length,
          leftOut: JSON.stringify(leftOut),
        })
        .execute()
      return { importId, rows: checked.rows, kept: rows.length, leftOut, makes, notes: checked.notes }
    })
  } finally {
    end(importId)
  }
}

/** What a check would make, without storing anything. */
export function makesOf(
  checked: CheckedTable,
  trial: TrialRow,
  table: NewTable,
  names: Awaited<ReturnType<typeof namesIn>>,
): TableCheck['makes'] {
  const around = namesAround(trial.id, names, new Map(), new Map())
  return {
    ...counted(layOut(checked.good, { columns: checked.columns, answers: table, around })),
    levels: levelsMet(checked),
  }
}

function refuseUnfinished(checked: CheckedTable, table: NewTable): void {
  const needed = checked.asks.filter((ask) => ask.needed)
  if (needed.length > 0) {
    throw new Problem(
      'at-fault',
      'Something has to be said once before these rows can be kept.',
      needed.map((ask) => ({ pointer: `#/${ask.key}`, detail: ask.question })),
    )
  }
  if (checked.faults.length > 0 && table.keep === 'all') {
    throw new Problem(
      'at-fault',
      `${checked.rows - checked.good.length} of ${checked.rows} rows cannot be kept as they are; nothing was stored.`,
      checked.faults.slice(0, 200).map(asFault),
    )
  }
  if (rowsToKeep(checked, table.keep).length === 0) {
    throw new Problem(
      'at-fault',
      'No row of this table is ready to be kept.',
      checked.faults.slice(0, 200).map(asFault),
    )
  }
}

function asFault(fault: CellFault) {
  const cell = fault.column === null ? '' : `/${fault.column}`
  const where = fault.heading === null ? `Line ${fault.line}` : `Line ${fault.line}, ${fault.heading}`
  return {
    pointer: `#/rows/${fault.row - 1}${cell}`,
    detail: `${where}: ${fault.read === '' ? 'blank' : fault.read}. ${fault.detail}`,
  }
}

function firstFaults(checked: CheckedTable): CellFault[] {
  const byRow = new Map<number, CellFault>()
  for (const fault of [...checked.faults, ...checked.doubts])
    if (!byRow.has(fault.row)) byRow.set(fault.row, fault)
  return [...byRow.values()].sort((a, b) => a.row - b.row)
}

async function withNewFactors(
  tx: Kysely<Database>,
  trialId: string,
  checked: CheckedTable,
  factors: readonly FactorWithLevels[],
): Promise<FactorWithLevels[]> {
  const all = [...factors]
  for (const { factor, levels, isNew } of levelsMet(checked)) {
    if (!isNew) continue
    const known = checked.factors.get(factor)
    const values = new Map(checked.good.flatMap((row) => levelValues(row, factor)))
    const { row } = await addFactor(tx, trialId, {
      key: factor,
      ...(known ? { kind: known.kind } : {}),
      ...(stageGuess(factor) ? { stage: stageGuess(factor) } : {}),
      unit: null,
      levels: levels.map((label) => ({ label, value: values.get(label) ?? null, isReference: false })),
    })
    all.push(row)
  }
  return all
}

function levelValues(row: RowValues, factor: string): [string, number | null][] {
  return row.levels.filter((level) => level.factor === factor).map((level) => [level.label, level.value])
}

/** Factors of one's own that a table brings: the stage at which they are usually given. */
function stageGuess(factor: string): 'dye' | 'remedy' | undefined {
  if (factor === 'remedy') return 'remedy'
  return ['base', 'colourway', 'schedule', 'shortcut', 'treatment', 'arm', 'colour'].includes(factor)
    ? 'dye'
    : undefined
}

function aroundOf(
  trialId: string,
  names: Awaited<ReturnType<typeof namesIn>>,
  factors: readonly FactorWithLevels[],
): Around {
  const levelIds = new Map<string, { factorId: string; levelId: string }>()
  for (const factor of factors) {
    for (const level of factor.levels) {
      levelIds.set(nameOfLevel(factor.key, level.label), { factorId: factor.id, levelId: level.id })
    }
  }
  const stageOf = new Map(factors.map((factor) => [factor.key, factor.stage]))
  return namesAround(trialId, names, stageOf, levelIds)
}

function namesAround(
  trialId: string,
  { sessions, skeins, bases }: Awaited<ReturnType<typeof namesIn>>,
  stageOf: Around['stageOf'],
  levelIds: Around['levelIds'],
): Around {
  return {
    trialId,
    stageOf,
    levelIds,
    sessionIds: new Map(sessions.map((session) => [nameOfSession(session.kind, session.label), session.id])),
    skeinIds: new Map(skeins.map((skein) => [skein.code, skein.id])),
    twins: new Set(skeins.flatMap(({ code, role }) => (role.endsWith('twin') ? [code] : []))),
    baseIds: new Map(bases.map((base) => [base.name, base.id])),
  }
}

async function write(
  tx: Kysely<Database>,
  trialId: string,
  laidOut: LaidOut,
  told: (share: number) => void,
): Promise<Followed> {
  const parts = [
    ['base', laidOut.bases],
    ['session', laidOut.sessions],
    ['vessel', laidOut.vessels],
    // A part stands after the piece it was cut from, but within one statement the order does not matter.
    ['skein', laidOut.skeins],
    ['placement', laidOut.placements],
    ['treatment', laidOut.treatments],
    ['exposure', laidOut.exposures],
    ['sitting', laidOut.sittings],
    ['outcome', laidOut.outcomes],
  ] as const
  await trustReferences(tx)
  const skeinIds = [...laidOut.skeins.map((skein) => skein.id), ...laidOut.known]
  // Working the results out takes about twice as long as the writing.
  const records = parts.reduce((sum, [, rows]) => sum + rows.length, 0) + laidOut.readings.length
  const of = records * 3
  let done = 0
  for (const [table, rows] of parts) {
    for (let from = 0; from < rows.length; from += atOnce) {
      told(done / of)
      await insertRows(tx, table, rows.slice(from, from + atOnce))
      done += Math.min(atOnce, rows.length - from)
    }
  }
  for (let from = 0; from < laidOut.readings.length; from += atOnce) {
    told(done / of)
    await insertRows(
      tx,
      'reading',
      await readingRows(tx, trialId, laidOut.readings.slice(from, from + atOnce)),
    )
    done += Math.min(atOnce, laidOut.readings.length - from)
  }
  const fated = await tellFates(tx, laidOut.fates)
  const otherwise = await giveOtherwise(tx, trialId, laidOut.given)
  for (let from = 0; from < skeinIds.length; from += derivedAtOnce) {
    told((records + (2 * records * from) / skeinIds.length) / of)
    await deriveResults(tx, skeinIds.slice(from, from + derivedAtOnce))
  }
  return { fated, otherwise }
}

const atOnce = 10_000
const derivedAtOnce = 2000

function counted(laidOut: LaidOut): Omit<TableCheck['makes'], 'levels'> {
  return {
    sessions: laidOut.sessions.length,
    vessels: laidOut.vessels.length,
    skeins: laidOut.skeins.length,
    readings: laidOut.readings.length,
    outcomes: laidOut.outcomes.length,
  }
}

function answersOf({
  text: _text,
  cells: _cells,
  columns: _columns,
  id: _id,
  ...answers
}: NewTable): Record<string, unknown> {
  return answers
}

function repeated(
  before: {
    id: string
    trialId: string
    rowsN: number
    keptN: number
    leftOut: unknown[]
    answers: Record<string, unknown>
  },
  trial: TrialRow,
): TableKept {
  if (before.trialId !== trial.id)
    throw new Problem('already-there', 'A table of another trial stands under this id.')
  return {
    importId: before.id,
    rows: before.rowsN,
    kept: before.keptN,
    leftOut: before.leftOut as CellFault[],
    makes: before.answers.makes as TableCheck['makes'],
    notes: [],
  }
}
