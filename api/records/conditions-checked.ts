import type { Kysely } from 'kysely'
import type { Doubt } from '#api/contract/one-or-many.ts'
import type { Conditions, Database } from '#db/tables.ts'
import { readConditions } from './read-conditions.ts'

/** What a PATCH sent, with its conditions checked; without them where none were sent. */
export async function conditionsChecked<Sent extends { readonly conditions?: unknown }>(
  db: Kysely<Database>,
  trialId: string | null | undefined,
  sent: Sent,
  doubts: Doubt[],
): Promise<Omit<Sent, 'conditions'> & { readonly conditions?: Conditions }> {
  const { conditions, ...rest } = sent
  if (conditions === undefined) return rest
  const [read = {}] = await readConditions(db, trialId, [{ conditions }], { at: () => '#', doubts })
  return { ...rest, conditions: read }
}
