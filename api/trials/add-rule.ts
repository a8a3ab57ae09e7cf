import type { Kysely } from 'kysely'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { type Fault, Problem } from '#api/contract/problem.ts'
import { judgedBy } from '#api/contract/question.ts'
import type { NewRule } from '#api/contract/trial.ts'
import { type Condition, conditionOf } from '#api/judging/condition.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { addRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { holdTrial, type RuleRow, rulesOf } from '#db/trials.ts'

/**
 * Writes an edition of the rule. The first needs no reason; a later one does, and is allowed at any time, for what was
 * changed and when is shown wherever the rule is. An edition that is still a draft is replaced by its successor.
 */
export async function addRule(
  db: Kysely<Database>,
  trialId: string,
  rule: NewRule,
): Promise<{ row: RuleRow; made: boolean }> {
  const faults = faultsOfRule(rule)
  if (faults.length > 0) throw new Problem('at-fault', 'This rule cannot judge as it stands.', faults)
  return inTransaction(db, async (tx) => {
    await holdTrial(tx, trialId)
    const before = await rulesOf(tx, trialId)
    const repeat = rule.id ? before.find((edition) => edition.id === rule.id) : undefined
    const edition = repeat?.edition ?? (before.at(-1)?.edition ?? 0) + 1
    if (edition > 1 && rule.reason === null) {
      throw new Problem('at-fault', 'A later edition of the rule says why.', [
        { pointer: '#/reason', detail: `This is edition ${edition}: give the reason for the change.` },
      ])
    }
    return addRow(tx, 'rule', { ...rule, trialId, edition, conditions: JSON.stringify(rule.conditions) })
  })
}

/** Locks an edition: from now on it judges, and is not changed. To lock what is locked is harmless. */
export async function lockRule(db: Kysely<Database>, trialId: string, edition: number): Promise<RuleRow> {
  return inTransaction(db, async (tx) => {
    await holdTrial(tx, trialId)
    const rules = await rulesOf(tx, trialId)
    const rule = rules.find((it) => it.edition === edition)
    if (!rule) throw new Problem('not-found', `This trial’s rule has no edition ${edition}.`)
    if (rule.lockedAt) return rule
    const later = rules.find((it) => it.edition > edition && it.lockedAt)
    if (later)
      throw new Problem('rule-locked', `Edition ${later.edition} is locked already; lock a newer one.`)
    return tx
      .updateTable('rule')
      .set((is) => ({ lockedAt: is.fn<Date>('now'), version: is('version', '+', 1) }))
      .where('id', '=', rule.id)
      .returningAll()
      .executeTakeFirstOrThrow()
  })
}

function faultsOfRule(rule: NewRule): Fault[] {
  const faults: Fault[] = []
  for (const [i, condition] of rule.conditions.entries()) {
    const at = `#/conditions/${i}`
    if (condition.question === undefined && condition.statistic === undefined) {
      faults.push({
        pointer: `${at}/question`,
        detail: 'Say what is asked, such as “no-worse” or “within-limit”.',
      })
      continue
    }
    faults.push(...faultsOfNumbers(conditionOf(condition), at))
    const { min = -Infinity, max = Infinity, label } = outcomeKind(condition.outcome)
    for (const side of ['atLeast', 'atMost'] as const) {
      const limit = condition[side]
      // Blue wools have numbers of their own; a tolerance to the standard and what a meter sees are differences.
      const [least, most] = conditionOf(condition).question === 'light' ? [1, 8] : [min, max]
      if (limit !== undefined && (limit < least || limit > most))
        faults.push({ pointer: `${at}/${side}`, detail: `${label} ${limit} is outside ${least}–${most}.` })
    }
  }
  return faults
}

/** What a question cannot be answered without. */
function faultsOfNumbers(condition: Condition, at: string): Fault[] {
  const { question, outcome, margin, atLeast, atMost, against } = condition
  const byMeter = judgedBy(outcome) === 'meter' || judgedBy(outcome) === 'measured'
  if (margin === undefined) {
    if ((question === 'no-worse' || question === 'alike') && byMeter)
      return [
        {
          pointer: `${at}/margin`,
          detail: 'Give the margin: the largest extra loss that you would still accept.',
        },
      ]
    if (question === 'open-against-covered')
      return [
        {
          pointer: `${at}/margin`,
          detail: 'Give the margin: how much more the open half may change than the covered one.',
        },
      ]
  }
  const bounded = atLeast !== undefined || atMost !== undefined
  if (question === 'within-limit' && !bounded && (against !== 'next level' || margin === undefined))
    return [{ pointer: at, detail: 'A limit needs “atLeast” or “atMost”.' }]
  if (question === 'to-standard' && atMost === undefined && margin === undefined)
    return [{ pointer: `${at}/atMost`, detail: 'Give the tolerance: how far from the standard it may be.' }]
  if (question === 'sees' && atMost === undefined && margin === undefined)
    return [{ pointer: `${at}/margin`, detail: 'Give the margin that your way of measuring must see.' }]
  return []
}
