import type { Kysely } from 'kysely'
import { comparedWithStandards, type Family, familiesOf, holdSkeins } from './histories.ts'
import type { Database } from './tables.ts'

/**
 * Finds the families of these skeins, with every skein that is compared with a standard among them, and holds all of
 * them until the transaction ends, in one order. A write that changes a skein does this first: two that changed first
 * and held then would wait for each other.
 */
export async function holdKin(tx: Kysely<Database>, skeinIds: readonly string[]): Promise<Family[]> {
  const compared = await comparedWithStandards(tx, skeinIds)
  const families = await familiesOf(tx, [...new Set([...skeinIds, ...compared])])
  await holdSkeins(
    tx,
    families.flatMap((family) => family.ids),
  )
  return families
}
