import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { startLadder, storyText } from '#test/support/a-ladder.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import { rowCounts } from '#test/support/row-counts.ts'

const nobody = '11111111-1111-4111-8111-111111111111'

test('a table that names an instrument that is not there is refused whole', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  const before = await rowCounts(db)
  const text = storyText('steam-time-ladder.csv')
  const answer = await client.post(`/api/trials/${id}/table`, {
    text,
    between: { W2: 3 },
    instrumentId: nobody,
  })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/instrumentId' }] } })
  expect(await rowCounts(db)).toEqual(before)
})

test('after a table is kept, every reference leads somewhere, and the database looks them up again', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  await client.post(`/api/trials/${id}/table`, {
    text: storyText('steam-time-ladder.csv'),
    between: { W2: 3 },
    ownVessel: true,
  })
  const { rows: keys } = await sql<{ child: string; column: string; parent: string }>`
    select conrelid::regclass::text as child, a.attname as column, confrelid::regclass::text as parent
    from pg_constraint c join pg_attribute a on a.attrelid = c.conrelid and a.attnum = c.conkey[1]
    where c.contype = 'f' and array_length(c.conkey, 1) = 1 and connamespace = 'public'::regnamespace`.execute(
    db,
  )
  expect(keys.length).toBeGreaterThan(20)
  for (const { child, column, parent } of keys) {
    const { rows } = await sql<{ n: number }>`select count(*)::int as n from ${sql.raw(child)} c
      where c.${sql.raw(column)} is not null
      and not exists (select from ${sql.raw(parent)} p where p.id = c.${sql.raw(column)})`.execute(db)
    expect([child, column, rows[0]?.n]).toEqual([child, column, 0])
  }
  const refused = sql`insert into skein (trial_id, code) values (${nobody}, 'x')`.execute(db)
  await expect(refused).rejects.toMatchObject({ code: '23503' })
})
