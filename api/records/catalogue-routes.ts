import type { Kysely, Selectable } from 'kysely'
import { type Doubt, sentAs } from '#api/contract/one-or-many.ts'
import { listQuery } from '#api/contract/quantity.ts'
import type { z } from '#api/contract/schema.ts'
import { newRoutes, versionSeen } from '#api/http/routes.ts'
import { addRows, type NewRow } from '#db/add-rows.ts'
import { changeRow, listRows, type PlainTable, removeRow, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { adding, changing, listing, removing, showing } from './addresses.ts'
import { type Asked, idOf } from './asked.ts'
import { keptAs } from './kept.ts'

/** A noun of the studio that belongs to no trial: what it takes, what it shows, and what it works out. */
export type CatalogueNoun<
  T extends PlainTable,
  Sent extends z.ZodType,
  Part extends z.ZodType,
  Shape extends z.ZodRawShape,
> = {
  readonly table: T
  readonly noun: string
  readonly plural: string
  readonly sent: Sent
  readonly changed: Part
  readonly shown: z.ZodObject<Shape>
  readonly present: (row: Selectable<Database[T]>) => z.output<z.ZodObject<Shape>>
  /** Checks a record and adds what is derived; `pointer` begins every fault. */
  readonly complete: (
    db: Kysely<Database>,
    record: z.output<Sent>,
    context: { pointer: string; doubts: Doubt[] },
  ) => Promise<NewRow<T>> | NewRow<T>
  /** Columns that `complete` works out. */
  readonly derived?: readonly string[]
  /** Refuses a removal that no foreign key would. */
  readonly keep?: (db: Kysely<Database>, id: string) => Promise<void>
}

/** List, add (one or many), show, change and remove: the same for every noun that belongs to no trial. */
export function catalogueRoutes<
  T extends PlainTable,
  Sent extends z.ZodType,
  Part extends z.ZodType,
  Shape extends z.ZodRawShape,
>(db: Kysely<Database>, it: CatalogueNoun<T, Sent, Part, Shape>) {
  const { table, noun, plural, shown, present } = it
  const tags = [plural]
  const listed = listing('/', {
    tags,
    summary: `The ${plural}, oldest first`,
    where: {},
    query: listQuery,
    shown,
  })
  const added = adding('/', { tags, summary: `Add a ${noun}, or several`, where: {}, sent: it.sent, shown })
  const one = showing({ tags, summary: `One ${noun}`, shown })
  const changed = changing({
    tags,
    summary: `Change a ${noun} that is still at the version you saw`,
    sent: it.changed,
    shown,
  })
  const removed = removing({ tags, summary: `Remove a ${noun} that nothing else needs` })

  // The schemas are only known by name here; the types at the borders of this function hold instead.
  type Row = Selectable<Database[T]>
  return newRoutes()
    .openapi(listed, (async (c: Asked) => {
      const { rows, next } = await listRows(
        db,
        table,
        c.req.valid('query') as { limit: number; after?: string },
      )
      return c.json({ items: rows.map(present), next }, 200)
    }) as never)
    .openapi(added, (async (c: Asked) => {
      const sent = sentAs(c.req.valid('json') as z.output<Sent> & object)
      const { rows, madeN, doubts } = await writing(db, async (tx) => {
        const doubts: Doubt[] = []
        const complete: NewRow<T>[] = []
        for (const [index, record] of sent.items.entries())
          complete.push(await it.complete(tx, record as z.output<Sent>, { pointer: sent.at(index), doubts }))
        const added = await addRows(tx, table, complete, { at: sent.at, derived: it.derived ?? [] })
        return { ...added, doubts }
      })
      const kept = keptAs<Row, object>(sent, { rows, doubts }, present as (row: Row) => object)
      return c.json(kept, madeN > 0 ? 201 : 200)
    }) as never)
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
        const whole = { ...before, ...(c.req.valid('json') as object) }
        const {
          id: _id,
          version: _version,
          createdAt: _createdAt,
          ...complete
        } = (await it.complete(tx, whole as z.output<Sent>, { pointer: '#', doubts })) as Record<
          string,
          unknown
        >
        const changed = await changeRow(tx, table, idOf(c), { version, values: asText(complete), noun })
        return { row: changed, doubts }
      })
      return c.json({ ...present(row), doubts }, 200)
    }) as never)
    .openapi(removed, (async (c: Asked) => {
      const version = versionSeen(c.req.valid('header') as object)
      await writing(db, async (tx) => {
        await it.keep?.(tx, idOf(c))
        await removeRow(tx, table, idOf(c), { version, noun })
      })
      return c.body(null, 204)
    }) as never)
}

/** Lists and objects go into columns of JSON as text. */
function asText(values: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => [
      key,
      typeof value === 'object' && value !== null && !(value instanceof Date) ? JSON.stringify(value) : value,
    ]),
  )
}
