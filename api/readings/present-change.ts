import type { Change } from '#api/contract/reading.ts'
import type { ChangeRow } from '#db/results.ts'

export function presentChange(row: ChangeRow): Change {
  return {
    readingId: row.readingId,
    againstIds: [...row.againstIds],
    basis: row.basis,
    dL: row.dL,
    dA: row.dA,
    dB: row.dB,
    dC: row.dC,
    dH: row.dH,
    de76: row.de76,
    de00: row.de00,
    deF: row.deF,
    grade: row.grade,
  }
}
