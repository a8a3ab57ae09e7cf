import { randomUUID } from 'node:crypto'

/** What one request carried: all of these records, or none, may be there afterwards. */
export type Parcel = { readonly ids: readonly string[]; readonly acknowledged: boolean }

const inOneParcel = 5

/** Writes parcels to a running tool, one after the other, until it answers no more. */
export async function writeParcels(url: string, parcels: Parcel[]): Promise<void> {
  for (;;) {
    const ids = Array.from({ length: inOneParcel }, () => randomUUID())
    const items = ids.map((id) => ({ id, name: `Endured ${id}`, makerLot: ids[0] }))
    let status: number
    try {
      const answer = await fetch(`${url}/api/bases`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ items }),
      })
      status = answer.status
    } catch {
      // The connection broke: whether it was kept, nobody has said.
      parcels.push({ ids, acknowledged: false })
      return
    }
    if (status !== 201) throw new Error(`POST /api/bases answered ${status}`)
    parcels.push({ ids, acknowledged: true })
  }
}
