import { type Kysely, sql } from 'kysely'
import { conditionsSchema } from '#api/contract/conditions.ts'
import { crossChecks, doubtsAbout } from '#api/contract/cross-checks.ts'
import { faultsOf } from '#api/contract/faults.ts'
import type { Fault } from '#api/contract/problem.ts'
import type { Conditions, Database } from '#db/tables.ts'
import { type Adding, inItems, refuseFaults } from './adding.ts'

type Given = { readonly conditions?: unknown }

/**
 * The conditions of rows that are about to be written, checked against the bounds: amounts come out with their value
 * beside what was entered. Unknown keys are refused unless the trial has a factor of that key; doubts are collected.
 */
export async function readConditions(
  db: Kysely<Database>,
  trialId: string | null | undefined,
  rows: readonly Given[],
  { at = inItems, doubts }: Adding = {},
): Promise<Conditions[]> {
  if (rows.every(({ conditions }) => isEmpty(conditions))) return rows.map(() => ({}))
  const schema = conditionsSchema(trialId ? await factorKeys(db, trialId) : [])
  const faults: Fault[] = []
  const read = rows.map(({ conditions }, index) => {
    if (isEmpty(conditions)) return {}
    const base = `${at(index)}/conditions`
    const result = schema.safeParse(conditions)
    if (!result.success) {
      for (const fault of faultsOf(result.error)) faults.push(below(base, fault))
      return {}
    }
    const checked = crossChecks(result.data)
    faults.push(...checked.faults.map((fault) => below(base, fault)))
    if (faults.length === 0)
      doubts?.push(...[...doubtsAbout(result.data), ...checked.doubts].map((it) => below(base, it)))
    return result.data as Conditions
  })
  refuseFaults(faults)
  return read
}

function isEmpty(conditions: unknown): boolean {
  return (
    conditions === undefined || (typeof conditions === 'object' && Object.keys(conditions ?? {}).length === 0)
  )
}

function below(base: string, { pointer, detail }: Fault): { pointer: string; detail: string } {
  return { pointer: `${base}${pointer.slice(1)}`, detail }
}

async function factorKeys(db: Kysely<Database>, trialId: string): Promise<string[]> {
  const { rows } = await sql<{ key: string }>`select key from factor where trial_id = ${trialId}`.execute(db)
  return rows.map((row) => row.key)
}
