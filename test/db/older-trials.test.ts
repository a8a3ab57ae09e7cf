import { type Migration, sql } from 'kysely'
import { expect, test } from 'vitest'
import * as journal from '#db/migrations/0004-journal.ts'
import { aTrial } from '#test/support/a-trial.ts'

const migration: Migration = journal

test('a trial that is older than the journal has one from the moment of the migration', async () => {
  const trial = await aTrial()
  const undone = new Error('taken back')
  let seen: { createdAt: Date; journalFrom: Date; moment: Date } | undefined
  const migrated = trial.db.transaction().execute(async (tx) => {
    await sql`drop table journal`.execute(tx)
    await sql`drop function refuse_change_of_journal`.execute(tx)
    await sql`alter table trial drop column journal_from`.execute(tx)
    await migration.up(tx)
    const { rows } = await sql<NonNullable<typeof seen>>`select created_at, journal_from, now() as moment
      from trial where id = ${trial.id}`.execute(tx)
    seen = rows[0]
    throw undone
  })
  await expect(migrated).rejects.toBe(undone)
  expect(seen?.journalFrom).toEqual(seen?.moment)
  expect(seen?.journalFrom.getTime()).toBeGreaterThan(seen?.createdAt.getTime() ?? Infinity)
})
