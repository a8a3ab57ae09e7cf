import type { Kysely } from 'kysely'
import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import { day } from '#api/words/dates.ts'
import type { Database } from '#db/tables.ts'
import { trialRecord } from '#db/trial-record.ts'
import { verdictsOf } from '#db/verdicts.ts'
import { standingOf, todayOf } from './standing.ts'

/** The recorded verdicts of a trial, first look first, each with how it stands today. */
export async function verdictsOfTrial(db: Kysely<Database>, trialId: string): Promise<DeclaredVerdict[]> {
  const record = await trialRecord(db, trialId)
  const today = todayOf(record)
  const rows = await verdictsOf(db, trialId)
  return rows.map(({ body, stratum, look, ...row }) => {
    const newer = rows.find((it) => it.look > look && it.stratum === stratum)
    const kept = {
      finding: body,
      at: row.declaredAt,
      newer: newer && `another look was recorded ${day(newer.declaredAt)}`,
    }
    return {
      id: row.id,
      version: row.version,
      createdAt: row.createdAt.toISOString(),
      trialId: row.trialId,
      ruleEdition: row.ruleEdition,
      look,
      withinLevelId: row.withinLevelId,
      stratum,
      sessionsN: row.sessionsN,
      declaredAt: row.declaredAt.toISOString(),
      answer: body.verdict?.answer ?? 'not-settled',
      headline: body.verdict?.headline ?? '',
      lead: body.verdict?.lead ?? '',
      body: { ...body },
      ...standingOf(record, kept, today(stratum)),
    }
  })
}
