import type { Kysely, Selectable } from 'kysely'
import { sql } from 'kysely'
import type { Database, SettingTable } from './tables.ts'

export function listSettings(db: Kysely<Database>): Promise<Selectable<SettingTable>[]> {
  return db.selectFrom('setting').selectAll().orderBy('key').execute()
}

/**
 * Keeps a setting that is still at the version that was seen, 0 where nobody has chosen it yet.
 * Undefined when it was changed meanwhile.
 */
export function keepSetting(
  db: Kysely<Database>,
  key: string,
  { value, version }: { readonly value: object; readonly version: number },
): Promise<Selectable<SettingTable> | undefined> {
  const text = JSON.stringify(value)
  if (version === 0)
    return db
      .insertInto('setting')
      .values({ key, value: text })
      .onConflict((conflict) => conflict.column('key').doNothing())
      .returningAll()
      .executeTakeFirst()
  return db
    .updateTable('setting')
    .set({ value: text, version: sql<number>`version + 1` })
    .where('key', '=', key)
    .where('version', '=', version)
    .returningAll()
    .executeTakeFirst()
}
