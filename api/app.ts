import { OpenAPIHono } from '@hono/zod-openapi'
import { bodyLimit } from 'hono/body-limit'
import { requestId } from 'hono/request-id'
import type { Kysely } from 'kysely'
import { calculationRoutes } from '#api/calculations/routes.ts'
import { Problem } from '#api/contract/problem.ts'
import { evidenceRoutes, sheetPages } from '#api/evidence/routes.ts'
import { exampleStudioRoutes } from '#api/example-studio/routes.ts'
import { findingRoutes } from '#api/findings/routes.ts'
import { healthRoutes } from '#api/health/routes.ts'
import { homeRoutes } from '#api/home/routes.ts'
import { acceptsBodies } from '#api/http/accepts.ts'
import { door } from '#api/http/door.ts'
import { notFoundHandler, problemHandler } from '#api/http/problem.ts'
import { withPlainHeaders } from '#api/http/security-headers.ts'
import { instrumentFileRoutes } from '#api/instrument-files/routes.ts'
import { journalRoutes } from '#api/journal/routes.ts'
import { planRoutes } from '#api/plan/routes.ts'
import { mountRecords } from '#api/records/mount.ts'
import { settingRoutes } from '#api/settings/routes.ts'
import type { SigningIn } from '#api/sign-in/open-sign-in.ts'
import { needsSignIn, signInRoutes } from '#api/sign-in/routes.ts'
import { tableRoutes } from '#api/table/routes.ts'
import { trialRoutes } from '#api/trials/routes.ts'
import { refusalByDatabase } from '#db/failures.ts'
import type { Database } from '#db/tables.ts'

/** The most that one request may carry. */
const mostBytes = 8 * 1024 * 1024

/** What the whole application needs from outside; `main.ts` alone opens and reads these. */
export type Surroundings = {
  readonly db: Kysely<Database>
  /** The address that customers reach, for links and QR codes. */
  readonly publicUrl?: string | undefined
  /** The origins under which it answers; unless given those of a request that never left this process. */
  readonly origins?: ReadonlySet<string>
  /** Where there is a phrase, everybody signs in with it. */
  readonly signingIn?: SigningIn | undefined
}

/** Mounts every noun; one error handler, no I/O of its own. */
export function createApp({
  db,
  origins = new Set(['http://localhost']),
  signingIn,
}: Surroundings): OpenAPIHono {
  const app = new OpenAPIHono()
  app.use(requestId())
  app.use(withPlainHeaders)
  app.use(door(origins))
  if (signingIn) app.use(needsSignIn(signingIn))
  app.use(
    '/api/*',
    bodyLimit({
      maxSize: mostBytes,
      onError: () => {
        throw new Problem('too-large', 'One request may carry 8 MiB. Send the rest in a second one.')
      },
    }),
  )
  app.use('/api/*', acceptsBodies)
  app.route('/api/health', healthRoutes(db))
  app.route('/api', signInRoutes(signingIn))
  app.route('/api/home', homeRoutes(db))
  app.route('/api/calculations', calculationRoutes())
  app.route('/api/settings', settingRoutes(db))
  app.route('/api/trials', trialRoutes(db))
  app.route('/api/trials', planRoutes(db))
  app.route('/api/trials', tableRoutes(db))
  app.route('/api/trials', instrumentFileRoutes(db))
  app.route('/api/trials', findingRoutes(db))
  app.route('/api/trials', evidenceRoutes(db))
  app.route('/api/trials', journalRoutes(db))
  app.route('/api/example-studio', exampleStudioRoutes(db))
  app.route('/sheets', sheetPages(db))
  mountRecords(app, db)
  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Runs Clear',
      version: '1',
      description: 'Side-by-side dyeing trials, verdicts and evidence.',
    },
  })
  app.onError((error, c) => problemHandler(refusalByDatabase(error) ?? error, c))
  app.notFound(notFoundHandler)
  return app
}
