import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import { baseRoutes } from '#api/bases/bases.ts'
import { dyeRoutes } from '#api/dyes/dyes.ts'
import { exposureRoutes, vesselExposureRoutes } from '#api/exposures/exposures.ts'
import { instrumentRoutes } from '#api/instruments/instruments.ts'
import { outcomeRoutes, trialOutcomeRoutes } from '#api/outcomes/outcomes.ts'
import { placementRoutes, vesselPlacementRoutes } from '#api/placements/placements.ts'
import { readingRoutes, trialReadingRoutes } from '#api/readings/readings.ts'
import { rinseRoutes, trialRinseRoutes } from '#api/rinses/rinses.ts'
import { sessionRoutes, sharedSessionRoutes, trialSessionRoutes } from '#api/sessions/sessions.ts'
import { sittingRoutes } from '#api/sittings/sittings.ts'
import { skeinRoutes, trialSkeinRoutes } from '#api/skeins/skeins.ts'
import { stampRoutes, trialStampRoutes } from '#api/stamps/stamps.ts'
import { stockRoutes } from '#api/stocks/stocks.ts'
import { treatmentRoutes, trialTreatmentRoutes } from '#api/treatments/treatments.ts'
import { sessionVesselRoutes, vesselRoutes } from '#api/vessels/vessels.ts'
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
