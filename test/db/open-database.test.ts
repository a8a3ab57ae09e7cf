import { sql } from 'kysely'
import { beforeEach, expect, test } from 'vitest'
import { runMigrations } from '#db/migrate.ts'
import { migrations } from '#db/migrations/all.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

let db: Awaited<ReturnType<typeof emptyDatabase>>
beforeEach(async () => {
  db = await emptyDatabase()
})

const countBases = async (): Promise<number> => {
  const { rows } = await sql<{ n: number }>`select count(*) as n from base`.execute(db)
  return rows[0]?.n ?? Number.NaN
}

test('a transaction that is taken back and a row written meanwhile stay apart', async () => {
  let begun = (): void => {}
  const inside = new Promise<void>((resolve) => {
    begun = resolve
  })
  const takenBack = db.transaction().execute(async (tx) => {
    await tx.insertInto('base').values({ name: 'inside' }).execute()
    begun()
    await new Promise((resolve) => setTimeout(resolve, 50))
    throw new Error('take it back')
  })
  await inside
  await Promise.all([
    expect(takenBack).rejects.toThrow('take it back'),
    db.insertInto('base').values({ name: 'beside' }).execute(),
  ])
  const names = await db.selectFrom('base').select('name').execute()
  expect(names).toEqual([{ name: 'beside' }])
})

test('a failed statement takes its transaction back and leaves the connection usable', async () => {
  const failed = db.transaction().execute(async (tx) => {
    await tx.insertInto('base').values({ name: 'one' }).execute()
    await sql`select 1 / ${0}::int`.execute(tx)
  })
  await expect(failed).rejects.toMatchObject({ code: '22012' })
  expect(await countBases()).toBe(0)
})

test('many at once all get their turn', async () => {
  const names = Array.from({ length: 200 }, (_, i) => `base ${i}`)
  await Promise.all(names.map((name) => db.insertInto('base').values({ name }).execute()))
  expect(await countBases()).toBe(200)
})

test('a broken rule of the tables names its code and constraint', async () => {
  const twice = [1, 2].map(() => ({ key: 'units', value: '{}' }))
  await expect(db.insertInto('setting').values(twice).execute()).rejects.toMatchObject({
    code: '23505',
    constraint: 'setting_key_key',
  })
})

test('migrations that ran already do not run again', async () => {
  expect(await runMigrations(db)).toEqual([])
  const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db)
  expect(rows.map((row) => row.name)).toEqual(Object.keys(migrations))
})
