import type { Selectable } from 'kysely'
import type { Outcome } from '#api/contract/outcome.ts'
import { correctedOf, momentText, storedOf } from '#api/records/moments.ts'
import type { OutcomeTable } from '#db/tables.ts'

export function presentOutcome(row: Selectable<OutcomeTable>): Outcome {
  return {
    ...storedOf(row),
    kind: row.kind,
    skeinId: row.skeinId,
    vesselId: row.vesselId,
    value: row.value,
    text: row.text,
    unit: row.unit,
    fibre: row.fibre,
    companionId: row.companionId,
    wear: row.wear,
    sittingId: row.sittingId,
    grader: row.grader,
    blindCode: row.blindCode,
    takenAt: momentText(row.takenAt),
    ...correctedOf(row),
  }
}
