import { bounds, isVariable, type VariableKey } from '#api/contract/bounds.ts'
import { countsAs } from '#api/contract/condition-value.ts'
import { readDecimal } from '#api/contract/quantity.ts'
import { readVariable, unitInCell } from './read-cell.ts'
import type { LevelValue, TableFactor } from './row-values.ts'

/** The level of a factor that a cell names, by its label or its number; else what is wrong with it. */
export function levelIn(
  cell: string,
  factor: TableFactor,
  columnUnit: string | undefined,
): LevelValue | { detail: string; suggestion?: string } {
  const known = factor.levels.map((level) => level.label).join(', ')
  if (cell === '')
    return { detail: `Which level of ${factor.label}? ${known ? `One of ${known}.` : ''}`.trim() }
  const own = factor.kind === 'number' ? unitInCell(cell) : undefined
  const kept = isVariable(factor.key) ? bounds[factor.key].unit : undefined
  // “27 h” in a column of minutes is 27 hours; where it can’t be turned into the unit of the factor it is asked about.
  if (own && kept === undefined && columnUnit !== undefined && own.unit !== columnUnit)
    return { detail: `“${cell}” is in ${own.unit}, the column in ${columnUnit}. Write it in ${columnUnit}.` }
  const unit = kept === undefined ? columnUnit : (own?.unit ?? columnUnit)
  const converts = unit !== undefined && isVariable(factor.key) && unit !== bounds[factor.key].unit
  const same = converts ? undefined : factor.levels.find((level) => level.label === cell)
  if (same) return { factor: factor.key, label: same.label, value: same.value }
  const typed = readDecimal(withoutUnit(cell))
  const counts =
    converts && typeof typed === 'number'
      ? countsAs(factor.key as VariableKey, { amount: typed, unit })
      : undefined
  if (counts?.kind === 'fault') return { detail: counts.detail }
  const read = counts?.kind === 'value' ? counts.value : typed
  if (factor.kind === 'number') {
    if (typeof read !== 'number' || !Number.isFinite(read))
      return { detail: `${factor.label} is a number. ${known ? `One of ${known}.` : ''}`.trim() }
    const level = factor.levels.find((it) => it.value === read)
    if (level) return { factor: factor.key, label: level.label, value: level.value }
    if (!factor.isNew) return { detail: `${cell} is none of the levels of this trial: ${known}.` }
    const refused = isVariable(factor.key) ? readVariable(String(read), factor.key as VariableKey) : undefined
    if (refused?.kind === 'fault')
      return { detail: refused.detail, ...(refused.suggestion ? { suggestion: refused.suggestion } : {}) }
    return { factor: factor.key, label: String(read), value: read }
  }
  if (!factor.isNew) {
    const near = factor.levels.find((level) => level.label.toLowerCase() === cell.toLowerCase())
    return {
      detail: `“${cell}” is none of the levels of this trial: ${known}.`,
      ...(near ? { suggestion: near.label } : {}),
    }
  }
  return { factor: factor.key, label: cell, value: null }
}

/** “35 min” as “35”. */
function withoutUnit(cell: string): string {
  const at = cell.search(/[a-zA-Z%°/]/)
  return at < 0 ? cell : cell.slice(0, at)
}
