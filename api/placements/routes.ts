import type { Kysely } from 'kysely'
import { ChangedPlacement, Placement } from '#api/contract/placement.ts'
import { refuseFaults } from '#api/records/adding.ts'
import { recordRoutes } from '#api/records/record-routes.ts'
import type { Database } from '#db/tables.ts'
import { presentPlacement } from './present-placement.ts'

/** `/api/placements/{id}`. */
export function placementRoutes(db: Kysely<Database>) {
  return recordRoutes(db, {
    table: 'placement',
    noun: 'placement',
    plural: 'placements',
    changed: ChangedPlacement,
    shown: Placement,
    present: presentPlacement,
    prepare: async (_tx, before, sent) => {
      const { inAt, outAt } = { ...before, ...sent }
      if (inAt && outAt && new Date(outAt) < new Date(inAt))
        refuseFaults([{ pointer: '#/outAt', detail: 'It came out before it went in.' }])
      return sent
    },
    touched: async (_tx, { skeinId }) => [skeinId],
  })
}

export type PlacementRoutes = ReturnType<typeof placementRoutes>
