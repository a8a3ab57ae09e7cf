import type { Kysely } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import type { z } from '#api/contract/schema.ts'
import type { NewTrial } from '#api/contract/trial.ts'
import { readConditions } from '#api/records/read-conditions.ts'
import { addRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import type { TrialRow } from '#db/trials.ts'

/** Writes a trial down. The same trial under the same id is harmless. */
export async function startTrial(
  db: Kysely<Database>,
  { conditions, held, ...trial }: z.output<typeof NewTrial>,
): Promise<{ row: TrialRow; made: boolean }> {
  if (trial.seed !== null && !Number.isSafeInteger(trial.seed)) {
    throw new Problem('at-fault', 'The seed is too large.', [
      { pointer: '#/seed', detail: 'A whole number up to 9007199254740991.' },
    ])
  }
  const [checked] = await readConditions(db, null, [{ conditions }], { at: () => '#' })
  return addRow(db, 'trial', {
    ...trial,
    conditions: JSON.stringify(checked ?? {}),
    held: JSON.stringify(held),
  })
}
