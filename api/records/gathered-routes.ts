import type { Kysely, Selectable } from 'kysely'
import { type Doubt, oneId, sentAs } from '#api/contract/one-or-many.ts'
import { listQuery } from '#api/contract/quantity.ts'
import type { z } from '#api/contract/schema.ts'
import { newRoutes } from '#api/http/routes.ts'
import type { Added } from '#db/add-rows.ts'
import { pageOf, type WholeName } from '#db/pages.ts'
import { type Page, type PlainTable, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import type { Adding } from './adding.ts'
import { adding, listing } from './addresses.ts'
import { type Asked, idOf } from './asked.ts'
import { keptAs } from './kept.ts'

type Owner = 'trial' | 'session' | 'vessel'

/** Records that belong to a trial, a session or a vessel: where they stand and how they are written. */
export type Gathered<
  Path extends string,
  O extends Owner,
  T extends PlainTable,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
> = {
  /** Below the owner's noun, such as `/{id}/readings`. */
  readonly path: Path
  readonly owner: O
  readonly table: T
  readonly noun: string
  readonly plural: string
  readonly whole: WholeName
  readonly sent: Sent
  readonly shown: z.ZodObject<Shape>
  readonly present: (row: Selectable<Database[T]>) => z.output<z.ZodObject<Shape>>
  /** Writes all of them in the transaction, with what follows from them. */
  readonly write: (
    tx: Kysely<Database>,
    owner: Selectable<Database[O]>,
    items: readonly z.output<Sent>[],
    adding: Adding,
  ) => Promise<Added<T>>
}

/** The list of such records, and their POST: one or many, all or nothing. */
export function gatheredRoutes<
  Path extends string,
  O extends Owner,
  T extends PlainTable,
  Sent extends z.ZodType,
  Shape extends z.ZodRawShape,
>(db: Kysely<Database>, it: Gathered<Path, O, T, Sent, Shape>) {
  const { path, owner, noun, plural, shown, present } = it
  const tags = [plural]
  const listed = listing(path, {
    tags,
    summary: `The ${plural} of a ${owner}, oldest first`,
    where: { params: oneId },
    query: listQuery,
    shown,
  })
  const added = adding(path, {
    tags,
    summary: `Add a ${noun}, or up to 5000 at once`,
    where: { params: oneId },
    sent: it.sent,
    shown,
  })
  // The schemas are only known by name here; the types at the borders of this function hold instead.
  type Row = Selectable<Database[T]>
  return newRoutes()
    .openapi(listed, (async (c: Asked) => {
      await theRow(db, owner, idOf(c), owner)
      const { rows, next } = await pageOf<Row>(db, it.whole, idOf(c), c.req.valid('query') as Page)
      return c.json({ items: rows.map(present), next }, 200)
    }) as never)
    .openapi(added, (async (c: Asked) => {
      const sent = sentAs(c.req.valid('json') as z.output<Sent> & object)
      const { rows, madeN, doubts } = await writing(db, async (tx) => {
        const doubts: Doubt[] = []
        const owned = await theRow(tx, owner, idOf(c), owner)
        const written = await it.write(tx, owned, sent.items as z.output<Sent>[], { at: sent.at, doubts })
        return { ...written, doubts }
      })
      const kept = keptAs<Row, object>(sent, { rows, doubts }, present as (row: Row) => object)
      return c.json(kept, madeN > 0 ? 201 : 200)
    }) as never)
}
