import type { Kysely, Selectable } from 'kysely'
import type { Doubt } from '#api/contract/one-or-many.ts'
import type { z } from '#api/contract/schema.ts'
import { newRoutes, versionSeen } from '#api/http/routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { holdKin } from '#db/hold-kin.ts'
import { changeRow, type PlainTable, removeRow, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { changing, removing, showing } from './addresses.ts'
import { type Asked, idOf } from './asked.ts'

/** A record that may be changed and removed, and whose skeins then have other results. */
export type ChangeableRecord<T extends PlainTable, Part extends z.ZodType, Shape extends z.ZodRawShape> = {
  readonly table: T
  readonly noun: string
  readonly plural: string
  readonly changed: Part
  readonly shown: z.ZodObject<Shape>
  readonly present: (row: Selectable<Database[T]>) => z.output<z.ZodObject<Shape>>
  /** Checks a change against what stands, and gives the columns to set. */
  readonly prepare: (
    tx: Kysely<Database>,
    before: Selectable<Database[T]>,
    sent: z.output<Part>,
    doubts: Doubt[],
  ) => Promise<Record<string, unknown>>
  /** What else follows from a change, before results are worked out anew. */
  readonly follow?: (
    tx: Kysely<Database>,
    before: Selectable<Database[T]>,
    after: Selectable<Database[T]>,
  ) => Promise<void>
  /** Refuses a removal, with its reason. */
  readonly keep?: (tx: Kysely<Database>, row: Selectable<Database[T]>) => Promise<void>
  /** The skeins whose conditions, wear or results hang on this record. */
  readonly touched: (tx: Kysely<Database>, row: Selectable<Database[T]>) => Promise<readonly string[]>
}

/** Show, change and remove one record, by id and version; results follow in the same transaction. */
export function recordRoutes<T extends PlainTable, Part extends z.ZodType, Shape extends z.ZodRawShape>(
  db: Kysely<Database>,
  it: ChangeableRecord<T, Part, Shape>,
) {
  const { table, noun, plural, shown, present } = it
  const tags = [plural]
  const one = showing({ tags, summary: `One ${noun}`, shown })
  const changed = changing({
    tags,
    summary: `Change a ${noun} that is still at the version you saw`,
    sent: it.changed,
    shown,
  })
  const removed = removing({ tags, summary: `Remove a ${noun} of which nothing was measured` })
  // The schemas are only known by name here; the types at the borders of this function hold instead.
  return newRoutes()
    .openapi(one, (async (c: Asked) => {
      const row = await theRow(db, table, idOf(c), noun)
      c.header('etag', `"${(row as { version: number }).version}"`)
      return c.json(present(row), 200)
    }) as never)
    .openapi(changed, (async (c: Asked) => {
      const version = versionSeen(c.req.valid('header') as object)
      const { row, doubts } = await writing(db, async (tx) => {
        const doubts: Doubt[] = []
        const before = await theRow(tx, table, idOf(c), noun)
        const values = await it.prepare(tx, before, c.req.valid('json') as z.output<Part>, doubts)
        const skeins = await it.touched(tx, before)
        await holdKin(tx, skeins)
        const after = await changeRow(tx, table, idOf(c), { version, values, noun })
        await it.follow?.(tx, before, after)
        await deriveResults(tx, [...new Set([...skeins, ...(await it.touched(tx, after))])])
        return { row: after, doubts }
      })
      return c.json({ ...present(row), doubts }, 200)
    }) as never)
    .openapi(removed, (async (c: Asked) => {
      const version = versionSeen(c.req.valid('header') as object)
      await writing(db, async (tx) => {
        const row = await theRow(tx, table, idOf(c), noun)
        await it.keep?.(tx, row)
        const skeins = await it.touched(tx, row)
        await holdKin(tx, skeins)
        await removeRow(tx, table, idOf(c), { version, noun })
        await deriveResults(tx, skeins)
      })
      return c.body(null, 204)
    }) as never)
}
