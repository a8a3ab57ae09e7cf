import { hc } from 'hono/client'
import type { NewTable, TableCheck, TableKept, TableProgress } from '#api/contract/table.ts'
import type { TableRoutes } from '#api/table/routes.ts'
import { answerOf } from './client.ts'

const trials = hc<TableRoutes>('/api/trials')

/** What the page sends: `keep` left out is `all`. */
export type TableSent = Omit<NewTable, 'keep'> & { readonly keep?: NewTable['keep'] }

/** What is wrong with a table, or doubtful, or has to be asked; nothing is kept. */
export const checkTable = (trialId: string, table: TableSent, signal: AbortSignal): Promise<TableCheck> =>
  answerOf<TableCheck>(
    trials[':id'].table.$post(
      { param: { id: trialId }, query: { check: 'true' }, json: table },
      { init: { signal } },
    ) as ReturnType<typeof fetch>,
  )

/** Keeps a table: all of it, or by choice its ready rows. */
export const keepTable = (trialId: string, table: TableSent): Promise<TableKept> =>
  answerOf<TableKept>(
    trials[':id'].table.$post({ param: { id: trialId }, query: {}, json: table }) as ReturnType<typeof fetch>,
  )

/** How far a table is that is being kept right now; undefined before it begins and after it ends. */
export async function progressOf(trialId: string, importId: string): Promise<TableProgress | undefined> {
  const response = await trials[':id'].table[':importId'].progress.$get({ param: { id: trialId, importId } })
  return response.ok ? ((await response.json()) as TableProgress) : undefined
}

/** Where the trial's table is to be had as CSV. */
export const csvOf = (trialId: string): string => `/api/trials/${trialId}/table`
