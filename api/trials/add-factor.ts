import type { Kysely } from 'kysely'
import { bounds, isVariable, refusalOf } from '#api/contract/bounds.ts'
import { type Fault, Problem } from '#api/contract/problem.ts'
import type { NewFactor } from '#api/contract/trial.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { addRow } from '#db/rows.ts'
import type { Database, Stage } from '#db/tables.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'

/**
 * Writes a factor with its levels, least first. A key of the table of variables brings its stage and unit; the levels
 * of a number are sorted, those of a category keep their order. The reference is the one named, else the highest.
 */
export async function addFactor(
  db: Kysely<Database>,
  trialId: string,
  factor: NewFactor,
): Promise<{ row: FactorWithLevels; made: boolean }> {
  const known = isVariable(factor.key) ? bounds[factor.key] : undefined
  const kind =
    factor.kind ?? (known || factor.levels.every((level) => level.value !== null) ? 'number' : 'category')
  const stage = factor.stage ?? known?.stage
  const faults = faultsOfLevels(factor, kind)
  if (!stage)
    faults.push({
      pointer: '#/stage',
      detail: 'Say at which stage of the work this is given, such as “set”.',
    })
  if (faults.length > 0) throw new Problem('at-fault', 'The levels cannot be kept as they are.', faults)

  const levels = factor.levels.map((level) => ({
    ...level,
    value: kind === 'number' ? numberOf(level) : level.value,
  }))
  if (kind === 'number') levels.sort((a, b) => (a.value ?? 0) - (b.value ?? 0))
  const referenceAt = levels.findIndex((level) => level.isReference)
  const reference = referenceAt >= 0 ? referenceAt : levels.length - 1

  return inTransaction(db, async (tx) => {
    const { levels: _levels, ...sent } = factor
    const { row, made } = await addRow(tx, 'factor', {
      ...sent,
      trialId,
      kind,
      stage: stage as Stage,
      ordered: factor.ordered ?? kind === 'number',
      unit: factor.unit ?? known?.unit ?? null,
    })
    const kept: LevelRow[] = []
    if (!made) {
      kept.push(
        ...(await tx
          .selectFrom('level')
          .selectAll()
          .where('factorId', '=', row.id)
          .orderBy('position')
          .execute()),
      )
      if (kept.length !== levels.length || kept.some((level, i) => level.label !== levels[i]?.label)) {
        throw new Problem('already-there', 'Under this id stands a factor with other levels.', [
          { pointer: '#/levels', detail: `It has ${kept.map((level) => level.label).join(', ')}.` },
        ])
      }
    } else {
      for (const [position, level] of levels.entries()) {
        const written = await addRow(tx, 'level', {
          ...(level.id ? { id: level.id } : {}),
          factorId: row.id,
          position,
          label: level.label,
          value: level.value,
          isReference: position === reference,
        })
        kept.push(written.row)
      }
    }
    return { row: { ...row, levels: kept }, made }
  })
}

type Levels = NewFactor['levels']

/** A level's number: its value, else its label when that is one (“35” or “35 min”). */
function numberOf(level: Levels[number]): number | null {
  if (level.value !== null) return level.value
  const read = /^[+\-−]?\d+(?:[.,]\d+)?/.exec(level.label.trim())?.[0]
  return read === undefined ? null : Number(read.replace(',', '.').replace('−', '-'))
}

function faultsOfLevels(factor: NewFactor, kind: 'number' | 'category'): Fault[] {
  const faults: Fault[] = []
  const labels = new Set<string>()
  const values = new Set<number>()
  const references = factor.levels.filter((level) => level.isReference)
  for (const [i, level] of factor.levels.entries()) {
    const at = `#/levels/${i}`
    if (labels.has(level.label))
      faults.push({ pointer: `${at}/label`, detail: `“${level.label}” is there twice.` })
    labels.add(level.label)
    if (kind === 'category') continue
    const value = numberOf(level)
    if (value === null) {
      faults.push({
        pointer: `${at}/value`,
        detail: `“${level.label}” has no number; a level of this factor needs one.`,
      })
      continue
    }
    if (values.has(value)) faults.push({ pointer: `${at}/value`, detail: `${value} is there twice.` })
    values.add(value)
    const refused = isVariable(factor.key) ? refusalOf(factor.key, value) : undefined
    if (refused) faults.push({ pointer: `${at}/value`, detail: refused })
  }
  if (references.length > 1)
    faults.push({ pointer: '#/levels', detail: 'At most one level is the reference.' })
  return faults
}
