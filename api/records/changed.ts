import type { Kysely } from 'kysely'
import type { Doubt } from '#api/contract/one-or-many.ts'
import type { Database } from '#db/tables.ts'
import { readConditions } from './read-conditions.ts'

/** Conditions of a PATCH as the column takes them, checked; nothing where none were sent. */
export async function changedConditions(
  db: Kysely<Database>,
  trialId: string | null | undefined,
  sent: { readonly conditions?: unknown },
  doubts: Doubt[],
): Promise<{ conditions?: string }> {
  if (sent.conditions === undefined) return {}
  const [conditions] = await readConditions(db, trialId, [sent], { at: () => '#', doubts })
  return { conditions: JSON.stringify(conditions ?? {}) }
}
