import { bounds, isVariable } from '#api/contract/bounds.ts'
import type { Factor, Rule, Trial } from '#api/contract/trial.ts'
import type { FactorWithLevels, RuleRow, TrialRow } from '#db/trials.ts'

export function presentTrial(row: TrialRow): Trial {
  return {
    id: row.id,
    version: row.version,
    createdAt: row.createdAt.toISOString(),
    title: row.title,
    question: row.question,
    expectation: row.expectation,
    pattern: row.pattern,
    block: row.block,
    seed: row.seed,
    conditions: row.conditions,
    held: row.held.map(({ key, value, plusMinus }) => ({
      key,
      value,
      ...(plusMinus === undefined ? {} : { plusMinus }),
    })),
    invented: row.invented,
    archivedAt: row.archivedAt?.toISOString() ?? null,
  }
}

export function presentFactor(row: FactorWithLevels): Factor {
  return {
    id: row.id,
    version: row.version,
    createdAt: row.createdAt.toISOString(),
    trialId: row.trialId,
    key: row.key,
    label: isVariable(row.key) ? bounds[row.key].label : row.key,
    stage: row.stage,
    kind: row.kind,
    ordered: row.ordered,
    unit: row.unit,
    levels: row.levels.map(({ id, position, label, value, isReference }) => ({
      id,
      position,
      label,
      value,
      isReference,
    })),
  }
}

export function presentRule(row: RuleRow): Rule {
  return {
    id: row.id,
    version: row.version,
    createdAt: row.createdAt.toISOString(),
    trialId: row.trialId,
    edition: row.edition,
    conditions: row.conditions.map((condition) => ({ ...condition })),
    method: row.method,
    plannedSessions: row.plannedSessions,
    looks: row.looks,
    confidence: row.confidence,
    lockedAt: row.lockedAt?.toISOString() ?? null,
    reason: row.reason,
  }
}
