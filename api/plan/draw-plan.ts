import { randomInt } from 'node:crypto'
import type { Kysely } from 'kysely'
import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import type { DrawPlaces } from '#api/contract/plan.ts'
import { Problem } from '#api/contract/problem.ts'
import { keepAdded } from '#api/records/journal.ts'
import { type Said, unsaid } from '#api/records/said.ts'
import { sessions } from '#api/sessions/sessions.ts'
import { skeins as skeinNoun } from '#api/skeins/skeins.ts'
import { addRows } from '#db/add-rows.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { benchOf, drawnSessions } from '#db/plans.ts'
import type { Database } from '#db/tables.ts'
import { type FactorWithLevels, factorsOf, holdTrial, type TrialRow } from '#db/trials.ts'
import { layBench } from './lay-bench.ts'
import { layCards } from './lay-cards.ts'
import { skeinsStoodAt, vesselsStoodAt } from './stood-at.ts'

/** More pieces than these nobody dyes for one question. */
const mostSkeins = 4000

/**
 * Draws the places by lot and writes the planned sessions, vessels, skeins, placements and treatments. What was drawn
 * stays: with more sessions than before only the new ones are drawn, from the same seed, and go on evenly from it.
 */
export async function drawPlan(
  db: Kysely<Database>,
  trial: TrialRow,
  wanted: DrawPlaces,
  said: Said = unsaid,
): Promise<void> {
  await inTransaction(db, async (tx) => {
    await holdTrial(tx, trial.id)
    const factors = await factorsOf(tx, trial.id)
    refuseWithoutLevels(factors)
    const before = (await drawnSessions(tx, trial.id)).length
    if (before >= wanted.sessions) {
      throw new Problem(
        'already-there',
        `The places are drawn already, for ${before === 1 ? '1 session' : `${before} sessions`}. To add to them, ask for more.`,
        [{ pointer: '#/sessions', detail: `More than ${before} adds sessions.` }],
      )
    }
    const combinations = factors.reduce((product, { levels }) => product * levels.length, 1)
    const skeins = wanted.sessions * wanted.vesselsPerLevel * wanted.skeinsPerVessel * combinations
    if (skeins > mostSkeins) {
      throw new Problem('at-fault', `This bench would take ${skeins} skeins.`, [
        { pointer: '#/sessions', detail: `Plan ${mostSkeins} skeins at most in one trial.` },
      ])
    }
    const seed = before > 0 && trial.seed !== null ? trial.seed : (wanted.seed ?? trial.seed ?? newSeed())
    const bench = benchOfPattern(trial.pattern, factors[0]?.stage)
    const onCards = bench.given === 'skein'
    const lay = onCards ? layCards : layBench
    const standing = await benchOf(tx, trial.id)
    const laid = lay({
      ...wanted,
      trialId: trial.id,
      seed,
      numbers: Array.from({ length: wanted.sessions - before }, (_, i) => before + 1 + i),
      factors,
      bench,
      before: onCards ? skeinsStoodAt(standing) : vesselsStoodAt(standing),
    })
    if (seed !== trial.seed) {
      await tx
        .updateTable('trial')
        .set((is) => ({ seed, version: is('version', '+', 1) }))
        .where('id', '=', trial.id)
        .execute()
    }
    const drawn = await addRows(tx, 'session', laid.session)
    await addRows(tx, 'vessel', laid.vessel)
    const pieces = await addRows(tx, 'skein', laid.skein)
    await addRows(tx, 'placement', laid.placement)
    await addRows(tx, 'treatment', laid.treatment)
    // Sessions that are drawn after something was read stand in the journal; what lies in them comes and goes with them.
    await keepAdded(tx, sessions, drawn, { said })
    await keepAdded(tx, skeinNoun, pieces, { said })
  })
}

function refuseWithoutLevels(factors: readonly FactorWithLevels[]): void {
  if (factors.length > 0) return
  throw new Problem('at-fault', 'Say first what is varied: there are no levels to draw places for.', [
    { pointer: '#/factors', detail: 'Add a factor with its levels.' },
  ])
}

/** Eight digits: long enough, and still read aloud. */
export function newSeed(): number {
  return randomInt(10_000_000, 100_000_000)
}
