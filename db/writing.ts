import type { Kysely } from 'kysely'
import type { Database } from './tables.ts'

/** Two writers that wait for each other (40P01), or that saw each other's past (40001): neither did wrong. */
const collisions = new Set(['40P01', '40001'])
const mostTries = 5

/**
 * Does a write all or nothing in a transaction of its own. Where two writers collide the database undoes one of them;
 * it is done again, so `act` must leave nothing behind but what it wrote.
 */
export async function writing<Result>(
  db: Kysely<Database>,
  act: (tx: Kysely<Database>) => Promise<Result>,
): Promise<Result> {
  for (let tries = 1; ; tries++) {
    try {
      return await db.transaction().execute(act)
    } catch (error) {
      const { code } = error as { code?: string }
      if (tries === mostTries || code === undefined || !collisions.has(code)) throw error
    }
  }
}
