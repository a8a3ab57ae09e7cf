import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Kysely } from 'kysely'
import { NewTable } from '#api/contract/table.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { keepTable } from '#api/table/keep-table.ts'
import { addFactor } from '#api/trials/add-factor.ts'
import { addRule } from '#api/trials/add-rule.ts'
import { startTrial } from '#api/trials/start-trial.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { type ExampleTrial, exampleTrials } from '#db/sample-trials/example-trials.ts'
import type { Database } from '#db/tables.ts'

// Building takes the tables along, so that they lie in one place as seen from here, compiled or not.
const tables = fileURLToPath(new URL('../../db/sample-trials/', import.meta.url))

/**
 * Writes the example studio, every trial marked invented, through the same doors as a dyer’s own tables. To load it
 * twice is harmless: what is there stays as it is.
 *
 * @returns the ids of its trials, the steam ladder first
 */
export async function loadExampleStudio(db: Kysely<Database>): Promise<string[]> {
  const ids: string[] = []
  // The steam ladder last, so that it is the newest on the home page.
  for (const example of [...exampleTrials].reverse()) {
    ids.unshift(await inTransaction(db, async (tx) => (await theOneThere(tx, example)) ?? load(tx, example)))
  }
  return ids
}

async function theOneThere(tx: Kysely<Database>, { title }: ExampleTrial): Promise<string | undefined> {
  const there = await tx
    .selectFrom('trial')
    .select('id')
    .where('invented', '=', true)
    .where('title', '=', title)
    .executeTakeFirst()
  return there?.id
}

async function load(tx: Kysely<Database>, example: ExampleTrial): Promise<string> {
  const { title, question, pattern, rule, story } = example
  const { row: trial } = await startTrial(tx, {
    title,
    question,
    expectation: null,
    pattern,
    block: example.block ?? 'session',
    seed: null,
    conditions: {},
    held: example.held.map((it) => ({ ...it })),
    invented: true,
  })
  // A table asks for a column of each factor that it finds: what it does not name is given after it.
  if (!example.levelOfCode) await varied(tx, trial.id, example)
  if (rule) {
    await addRule(tx, trial.id, {
      conditions: rule.conditions.map((condition) => ({ ...condition })),
      method: 'paired',
      plannedSessions: rule.plannedSessions,
      looks: 1,
      confidence: 0.95,
      reason: null,
    })
    await tx.updateTable('rule').set({ lockedAt: rule.lockedAt }).where('trialId', '=', trial.id).execute()
  }
  const { file, ...answers } = story
  await keepTable(tx, trial, NewTable.parse({ text: readFileSync(`${tables}${file}`, 'utf8'), ...answers }))
  if (example.levelOfCode) await varied(tx, trial.id, example)
  await giveByCode(tx, trial.id, example)
  for (const [label, heldOn] of Object.entries(example.heldOn ?? {})) {
    await tx
      .updateTable('session')
      .set({ heldOn })
      .where('trialId', '=', trial.id)
      .where('label', '=', label)
      .execute()
  }
  if (example.base !== undefined) await onBase(tx, trial.id, example.base)
  await darkTwin(tx, trial.id, example)
  return trial.id
}

async function varied(tx: Kysely<Database>, trialId: string, { factors }: ExampleTrial): Promise<void> {
  for (const { key, stage, levels, reference } of factors) {
    await addFactor(tx, trialId, {
      key,
      unit: null,
      stage: stage ?? (key === 'steamTime' ? 'set' : 'dye'),
      levels: levels.map((level) => ({
        label: String(level),
        value: typeof level === 'number' ? level : null,
        isReference: level === reference,
      })),
    })
  }
}

async function giveByCode(
  tx: Kysely<Database>,
  trialId: string,
  { levelOfCode = {} }: ExampleTrial,
): Promise<void> {
  const levels = await tx
    .selectFrom('level')
    .innerJoin('factor', 'factor.id', 'level.factorId')
    .select(['level.id as levelId', 'factorId', 'level.label'])
    .where('factor.trialId', '=', trialId)
    .execute()
  for (const [begins, label] of Object.entries(levelOfCode)) {
    const level = levels.find((it) => it.label === label)
    if (!level) throw new RangeError(`The example has no level “${label}”.`)
    const skeins = await tx
      .selectFrom('skein')
      .select('id as skeinId')
      .where('trialId', '=', trialId)
      .where('code', 'like', `${begins}%`)
      .where('cutFromId', 'is', null)
      .execute()
    const { levelId, factorId } = level
    if (skeins.length > 0)
      await tx
        .insertInto('treatment')
        .values(skeins.map(({ skeinId }) => ({ factorId, levelId, skeinId })))
        .execute()
  }
}

async function onBase(tx: Kysely<Database>, trialId: string, name: string): Promise<void> {
  const base = await tx
    .insertInto('base')
    .values({
      name,
      composition: JSON.stringify([
        { fibre: 'wool', percent: 80 },
        { fibre: 'nylon', percent: 20 },
      ]),
      dyeablePercent: 100,
    })
    .returning('id')
    .executeTakeFirstOrThrow()
  await tx.updateTable('skein').set({ baseId: base.id }).where('trialId', '=', trialId).execute()
}

async function darkTwin(
  tx: Kysely<Database>,
  trialId: string,
  { darkTwin: days = [] }: ExampleTrial,
): Promise<void> {
  if (days.length === 0) return
  const twin = await tx
    .insertInto('skein')
    .values({ trialId, code: 'dark twin', role: 'dark twin', status: 'done' })
    .returning('id')
    .executeTakeFirstOrThrow()
  for (const { day, dE00 } of days) {
    const sitting = await tx
      .insertInto('sitting')
      .values({ trialId, method: 'instrument', label: `dark twin, ${day}`, at: `${day}T17:00:00Z` })
      .returning('id')
      .executeTakeFirstOrThrow()
    await tx
      .insertInto('outcome')
      .values({ kind: 'dE00', skeinId: twin.id, value: dE00, unit: 'ΔE00', sittingId: sitting.id })
      .execute()
  }
  await deriveResults(tx, [twin.id])
}
