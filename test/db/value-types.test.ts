import { sql } from 'kysely'
import { beforeEach, expect, test } from 'vitest'
import { safeWhole } from '#db/value-types.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

let db: Awaited<ReturnType<typeof emptyDatabase>>
beforeEach(async () => {
  db = await emptyDatabase()
})

async function read(expression: string): Promise<unknown> {
  const { rows } = await sql<{ value: unknown }>`select ${sql.raw(expression)} as value`.execute(db)
  return rows[0]?.value
}

// One table for both databases: what a value of each type is in JavaScript.
test.each<[string, unknown]>([
  ['7::int2', 7],
  ['7::int4', 7],
  ['9007199254740991::int8', 9_007_199_254_740_991],
  ['(select count(*) from base)', 0],
  ['12.50::numeric', 12.5],
  ['(select avg(x) from (values (1), (2)) as v (x))', 1.5],
  ['0.1::float8 + 0.2::float8', 0.1 + 0.2],
  [`'1e-300'::float8`, 1e-300],
  [`'NaN'::float8`, Number.NaN],
  ['true', true],
  [`'ochre'::text`, 'ochre'],
  [`'2026-03-29'::date`, '2026-03-29'],
  [`array['2026-03-29'::date, null]`, ['2026-03-29', null]],
  [`'2026-03-29T01:30:00+01:00'::timestamptz`, new Date('2026-03-29T00:30:00Z')],
  [`'2026-03-29 01:30:00'::timestamp`, '2026-03-29 01:30:00'],
  [`'90 minutes'::interval`, '01:30:00'],
  [`'{"aB": [1, null, "x"]}'::jsonb`, { aB: [1, null, 'x'] }],
  ['array[1, 2]::int4[]', [1, 2]],
  ['array[1, 2]::int8[]', [1, 2]],
  ['array[1.5, 2]::numeric[]', [1.5, 2]],
  ['array[1.5, 2]::float8[]', [1.5, 2]],
  [`array['a', 'b,c', null]::text[]`, ['a', 'b,c', null]],
  [`array['0e37df36-f698-11e6-8dd4-cb9ced3df976']::uuid[]`, ['0e37df36-f698-11e6-8dd4-cb9ced3df976']],
])('%s is read as %j', async (expression, value) => {
  expect(await read(expression)).toEqual(value)
})

test('bytes come as they went', async () => {
  const value = (await read(`'\\x00ff10'::bytea`)) as Uint8Array
  expect([...value]).toEqual([0, 255, 16])
})

test('a whole number that JavaScript cannot hold exactly is an error, not another number', async () => {
  await expect(read('9007199254740993::int8')).rejects.toThrow('too large to be read exactly')
  expect(() => safeWhole('-9007199254740993')).toThrow(RangeError)
})

test('a day is written and read as the same day', async () => {
  const { id } = await db
    .insertInto('session')
    .values({ label: 'Monday', heldOn: '2026-03-29' })
    .returning('id')
    .executeTakeFirstOrThrow()
  const row = await db.selectFrom('session').select('heldOn').where('id', '=', id).executeTakeFirstOrThrow()
  expect(row.heldOn).toBe('2026-03-29')
})

test('the day of a moment is that of UTC, wherever the database stands', async () => {
  expect(await read(`('2026-03-29T23:30:00Z'::timestamptz)::date`)).toBe('2026-03-29')
})

test('keys inside JSON keep their spelling, columns change theirs', async () => {
  await db
    .insertInto('base')
    .values({
      name: 'Merino',
      dyeablePercent: 100,
      composition: JSON.stringify([{ fibre: 'wool', percent: 100, snake_case: 1 }]),
    })
    .execute()
  const base = await db.selectFrom('base').select(['dyeablePercent', 'composition']).executeTakeFirstOrThrow()
  expect(base).toEqual({ dyeablePercent: 100, composition: [{ fibre: 'wool', percent: 100, snake_case: 1 }] })
})
