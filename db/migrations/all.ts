import type { Migration } from 'kysely'
import * as records from './0001-records.ts'
import * as verdictWithinLevel from './0002-verdict-within-level.ts'
import * as drawnLevel from './0003-drawn-level.ts'
import * as journal from './0004-journal.ts'
import * as verdictStratum from './0005-verdict-stratum.ts'

/** In order, forward only, never renamed: a new change of the tables is a new file and a new line here. */
export const migrations: Record<string, Migration> = {
  '0001-records': records,
  '0002-verdict-within-level': verdictWithinLevel,
  '0003-drawn-level': drawnLevel,
  '0004-journal': journal,
  '0005-verdict-stratum': verdictStratum,
}
