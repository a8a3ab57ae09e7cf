import { wearKey } from '#api/contract/wear.ts'
import { figure } from '#api/words/numbers.ts'
import type { Asked } from './asked.ts'
import { type Drift, driftOf, lossWithoutDrift } from './drift.ts'
import { type JudgedRow, judgedRows } from './judged-rows.ts'

/**
 * The rows that a condition judges, with the drift of the measuring taken off every loss whose colours are known. A
 * difference between two halves in one sitting has no drift in it.
 */
export function rowsWithoutDrift(asked: Asked): {
  readonly rows: readonly JudgedRow[]
  readonly drift: Drift | undefined
} {
  const rows = judgedRows(asked)
  const { trial, condition } = asked
  const drift = condition.outcome === 'dE00' ? driftOf(trial, condition) : undefined
  if (!drift) return { rows, drift }
  const key = wearKey(condition.wear)
  const colours = new Map(
    trial.record.colours.filter((it) => wearKey(it.wear) === key).map((it) => [it.skeinId, it]),
  )
  return {
    drift,
    rows: rows.map((row) => {
      const { result } = row
      const colour = colours.get(row.skein.id)
      if (result?.basis !== 'own' || !colour) return row
      const { dL, dA, dB } = result
      if (dL === null || dA === null || dB === null) return row
      const after = { L: colour.l, a: colour.a, b: colour.b }
      return { ...row, value: lossWithoutDrift(after, { L: dL, a: dA, b: dB }, drift.shift) }
    }),
  }
}

/** How it was worked out that a drift was taken off. */
export function driftInWords({ shift, twins }: Drift): string {
  return `The mean shift of ${twins} twins (ΔL* ${figure(shift.L)}, Δa* ${figure(shift.a)}, Δb* ${figure(shift.b)}) was taken off every reading after the wear.`
}
