import { openDatabase } from '#db/open-database.ts'
import type { Where } from '#test/support/running-server.ts'
import type { Parcel } from './parcel-writer.ts'

/** Opens the records that a killed tool left, and counts what is missing of what it had acknowledged. */
export async function lostAndTorn(
  where: Where,
  parcels: readonly Parcel[],
): Promise<{ lost: number; torn: number; kept: number }> {
  const opened = await openDatabase(where)
  try {
    const rows = await opened.db.selectFrom('base').select('id').execute()
    const there = new Set(rows.map((row) => row.id))
    let lost = 0
    let torn = 0
    for (const { ids, acknowledged } of parcels) {
      const found = ids.filter((id) => there.has(id)).length
      if (acknowledged) lost += ids.length - found
      else if (found !== 0 && found !== ids.length) torn++
    }
    return { lost, torn, kept: there.size }
  } finally {
    await opened.close()
  }
}
