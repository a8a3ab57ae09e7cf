import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { baseRoutes } from '#api/bases/routes.ts'
import { dyeRoutes } from '#api/dyes/routes.ts'
import { exposureRoutes } from '#api/exposures/routes.ts'
import { instrumentRoutes } from '#api/instruments/routes.ts'
import { outcomeRoutes, trialOutcomeRoutes } from '#api/outcomes/routes.ts'
import { placementRoutes } from '#api/placements/routes.ts'
import { readingRoutes, trialReadingRoutes } from '#api/readings/routes.ts'
import { rinseRoutes, trialRinseRoutes } from '#api/rinses/rinses.ts'
import {
  sessionRoutes,
  sessionVesselRoutes,
  sharedSessionRoutes,
  trialSessionRoutes,
} from '#api/sessions/routes.ts'
import { sittingRoutes } from '#api/sittings/routes.ts'
import { skeinRoutes, trialSkeinRoutes } from '#api/skeins/routes.ts'
import { stampRoutes, trialStampRoutes } from '#api/stamps/routes.ts'
import { stockRoutes } from '#api/stocks/routes.ts'
import { treatmentRoutes, trialTreatmentRoutes } from '#api/treatments/routes.ts'
import { vesselExposureRoutes, vesselPlacementRoutes, vesselRoutes } from '#api/vessels/routes.ts'
import type { Database } from '#db/tables.ts'

/** Mounts the nouns of the record: what the studio has, what was done, what was measured. */
export function mountRecords(app: OpenAPIHono, db: Kysely<Database>): void {
  app.route('/api/bases', baseRoutes(db))
  app.route('/api/dyes', dyeRoutes(db))
  app.route('/api/stocks', stockRoutes(db))
  app.route('/api/instruments', instrumentRoutes(db))
  app.route('/api/trials', trialSessionRoutes(db))
  app.route('/api/trials', trialSkeinRoutes(db))
  app.route('/api/trials', trialTreatmentRoutes(db))
  app.route('/api/trials', trialReadingRoutes(db))
  app.route('/api/trials', trialOutcomeRoutes(db))
  app.route('/api/trials', trialRinseRoutes(db))
  app.route('/api/trials', trialStampRoutes(db))
  app.route('/api/sessions', sessionVesselRoutes(db))
  app.route('/api/sessions', sharedSessionRoutes(db))
  app.route('/api/sessions', sessionRoutes(db))
  app.route('/api/vessels', vesselPlacementRoutes(db))
  app.route('/api/vessels', vesselExposureRoutes(db))
  app.route('/api/vessels', vesselRoutes(db))
  app.route('/api/skeins', skeinRoutes(db))
  app.route('/api/placements', placementRoutes(db))
  app.route('/api/treatments', treatmentRoutes(db))
  app.route('/api/exposures', exposureRoutes(db))
  app.route('/api/sittings', sittingRoutes(db))
  app.route('/api/readings', readingRoutes(db))
  app.route('/api/outcomes', outcomeRoutes(db))
  app.route('/api/rinses', rinseRoutes(db))
  app.route('/api/stamps', stampRoutes(db))
}
