import { CamelCasePlugin, CompiledQuery, Kysely, PostgresDialect } from 'kysely'
import type pg from 'pg'
import type { Database } from './tables.ts'

/** Kysely over a pool of either kind: snake case in SQL, camel case here, and the insides of JSON left as they are. */
export function kyselyOver(pool: pg.Pool): Kysely<Database> {
  return new Kysely<Database>({
    dialect: new PostgresDialect({
      pool,
      // Which day a moment falls on is asked in SQL too: the same answer wherever the server stands.
      onCreateConnection: async (connection) => {
        await connection.executeQuery(CompiledQuery.raw(`set time zone 'UTC'`))
      },
    }),
    plugins: [
      new CamelCasePlugin({ maintainNestedObjectKeys: true, underscoreBetweenUppercaseLetters: true }),
    ],
  })
}
