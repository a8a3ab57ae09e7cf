import type { Kysely } from 'kysely'
import { Exposure } from '#api/contract/exposure.ts'
import { newRoutes } from '#api/http/routes.ts'
import { showing } from '#api/records/addresses.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { presentExposure } from './present-exposure.ts'

const shown = showing({ tags: ['exposures'], summary: 'One exposure', shown: Exposure })

/** `/api/exposures/{id}`. */
export function exposureRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(shown, async (c) => {
    const row = await theRow(db, 'exposure', c.req.valid('param').id, 'exposure')
    return c.json(presentExposure(row), 200)
  })
}

export type ExposureRoutes = ReturnType<typeof exposureRoutes>
