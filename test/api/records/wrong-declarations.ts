import type { Kysely } from 'kysely'
import { dye } from '#api/contract/dye.ts'
import { rinse } from '#api/contract/rinse.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { addressesUnder } from '#api/records/addresses.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentMeasured } from '#api/records/present.ts'
import { addRinses } from '#api/rinses/add-rinses.ts'
import { rinses } from '#api/rinses/rinses.ts'
import type { Database } from '#db/tables.ts'

// What stands under `@ts-expect-error` is refused by the type check: should it pass one day, `npm run types` says so.
declare const db: Kysely<Database>

/** Never run: the type check alone reads it. */
export function wrongDeclarations() {
  const { added } = addressesUnder('/{id}/rinses', rinses)
  newRoutes().openapi(added, addTo(db, rinses))

  ownedNoun({
    ...rinses,
    add: (tx, trial, items, adding) =>
      addRinses(
        tx,
        trial.id,
        // @ts-expect-error a field that a rinse does not have
        items.map((item) => ({ ...item, number: item.turn })),
        adding,
      ),
  })
  ownedNoun({
    ...rinses,
    // @ts-expect-error the trial has no such column
    add: (tx, trial, items, adding) => addRinses(tx, trial.skeinId, items, adding),
  })
  ownedNoun({
    ...rinses,
    // @ts-expect-error a reply without the columns of the noun
    present: (row) => ({ id: row.id, version: row.version, createdAt: row.createdAt.toISOString() }),
  })
  // @ts-expect-error the rows of another table
  ownedNoun({ ...rinses, table: 'stamp' })
  // @ts-expect-error the handler of another noun
  newRoutes().openapi(added, addTo(db, { ...rinses, present: presentMeasured(rinse), sent: dye.sent }))
}
