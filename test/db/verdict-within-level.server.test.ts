import { sql } from 'kysely'
import { expect, inject, onTestFinished, test } from 'vitest'
import { runMigrations } from '#db/migrate.ts'
import { migrations } from '#db/migrations/all.ts'
import { openServer } from '#db/server-open.ts'
import { databaseAt } from '#test/support/database-at.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import '#test/support/provided.ts'

test('a verdict that was declared before has the level that its body names, and one of one factor has none', async () => {
  const database = inject('database')
  if (database.kind !== 'server') throw new Error('This test is for a server.')
  const name = `${database.template}_older`
  await sql`create database ${sql.id(name)} template template0`.execute(await emptyDatabase())
  const { db, close } = await openServer(databaseAt(database.url, name))
  onTestFinished(close)
  const first = '0001-records'
  await runMigrations(db, { [first]: migrations[first] as (typeof migrations)[string] })
  await sql`insert into trial (id, title, question, pattern) values
    ('00000000-0000-4000-8000-000000000001', 'Acid', 'How much?', 'P2')`.execute(db)
  await sql`insert into factor (id, trial_id, key, stage, kind, ordered) values
    ('00000000-0000-4000-8000-000000000002', '00000000-0000-4000-8000-000000000001', 'base', 'dye', 'category', false)`.execute(
    db,
  )
  await sql`insert into level (id, factor_id, position, label) values
    ('00000000-0000-4000-8000-000000000003', '00000000-0000-4000-8000-000000000002', 0, 'silk')`.execute(db)
  await sql`insert into verdict (trial_id, rule_edition, look, sessions_n, body) values
    ('00000000-0000-4000-8000-000000000001', 1, 1, 3, '{"within": {"levelId": "00000000-0000-4000-8000-000000000003"}}'),
    ('00000000-0000-4000-8000-000000000001', 1, 2, 3, '{"within": null}')`.execute(db)
  await runMigrations(db)
  const kept = await db
    .selectFrom('verdict')
    .select(['look', 'withinLevelId', 'stratum'])
    .orderBy('look')
    .execute()
  expect(kept).toEqual([
    {
      look: 1,
      withinLevelId: '00000000-0000-4000-8000-000000000003',
      stratum: '00000000-0000-4000-8000-000000000003',
    },
    { look: 2, withinLevelId: null, stratum: '' },
  ])
})
