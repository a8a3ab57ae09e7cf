import { bases } from '#api/bases/bases.ts'
import { dyes } from '#api/dyes/dyes.ts'
import { exposures } from '#api/exposures/exposures.ts'
import { instruments } from '#api/instruments/instruments.ts'
import { outcomes } from '#api/outcomes/outcomes.ts'
import { placements } from '#api/placements/placements.ts'
import { readings } from '#api/readings/readings.ts'
import { rinses } from '#api/rinses/rinses.ts'
import { sessions } from '#api/sessions/sessions.ts'
import { sittings } from '#api/sittings/sittings.ts'
import { skeins } from '#api/skeins/skeins.ts'
import { stamps } from '#api/stamps/stamps.ts'
import { stocks } from '#api/stocks/stocks.ts'
import { treatments } from '#api/treatments/treatments.ts'
import { vessels } from '#api/vessels/vessels.ts'

/** Every noun of the record, as it is declared. */
export const everyNoun = [
  bases,
  dyes,
  exposures,
  instruments,
  outcomes,
  placements,
  readings,
  rinses,
  sessions,
  sittings,
  skeins,
  stamps,
  stocks,
  treatments,
  vessels,
]
