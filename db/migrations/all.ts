import type { Migration } from 'kysely'
import * as records from './0001-records.ts'

/** In order, forward only, never renamed: a new change of the tables is a new file and a new line here. */
export const migrations: Record<string, Migration> = {
  '0001-records': records,
}
