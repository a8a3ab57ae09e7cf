import { CamelCasePlugin, Kysely, PostgresDialect } from 'kysely'
import type pg from 'pg'
import type { Database } from './tables.ts'

/** Kysely over a pool of either kind: snake case in SQL, camel case here, and the insides of JSON left as they are. */
export function kyselyOver(pool: pg.Pool): Kysely<Database> {
  return new Kysely<Database>({
    dialect: new PostgresDialect({ pool }),
    plugins: [
      new CamelCasePlugin({ maintainNestedObjectKeys: true, underscoreBetweenUppercaseLetters: true }),
    ],
  })
}
