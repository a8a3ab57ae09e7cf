import type { Kysely } from 'kysely'
import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import { patternPlan } from '#api/contract/patterns.ts'
import type { PlanTried, TriedPlan } from '#api/contract/plan.ts'
import { Problem } from '#api/contract/problem.ts'
import { type Asking, comparisons, questionOf } from '#api/contract/question.ts'
import { earlierLosses } from '#db/earlier-differences.ts'
import type { Database } from '#db/tables.ts'
import { factorsOf, ruleInForce, rulesOf, type TrialRow } from '#db/trials.ts'
import { countPlan } from './count-plan.ts'
import { newSeed } from './draw-plan.ts'
import { earlierSpread } from './earlier-spread.ts'
import { tryPlan } from './try-plan.ts'

/** Means of five spots with an instrument: the noise that a plan reckons with unless it knows better. */
const usualNoise = 0.3

/** Counts a plan, says what is wrong with its counting, and tries it with the rule that would judge it. */
export async function answerPlan(
  db: Kysely<Database>,
  trial: TrialRow,
  wanted: TriedPlan,
): Promise<PlanTried> {
  const factors = await factorsOf(db, trial.id)
  const [factor] = factors
  if (!factor) {
    throw new Problem('at-fault', 'Say first what is varied: a plan without levels counts nothing.', [
      { pointer: '#/factors', detail: 'Add a factor with its levels.' },
    ])
  }
  const rule = ruleInForce(await rulesOf(db, trial.id))
  const bench = benchOfPattern(trial.pattern, factor.stage)
  const others = factors.slice(1).reduce((product, { levels }) => product * levels.length, 1)
  const conditions: readonly TestedCondition[] =
    rule?.conditions ?? patternPlan(trial.pattern).rule.conditions
  const tested = conditions.find((it) => questionOf(it) === 'no-worse')
  const margin = wanted.margin ?? tested?.margin ?? null
  const confidence = wanted.confidence ?? rule?.confidence ?? patternPlan(trial.pattern).rule.confidence
  const spread = await spreadFor(db, trial, { key: factor.key, margin, wanted: wanted.sdOfDifferences })
  const noise = wanted.noise ?? (tested?.outcome === 'dE00' ? usualNoise : 0)
  const seed = wanted.seed ?? trial.seed ?? newSeed()
  const nothingToTry = whyNothing(tested, {
    levels: factor.levels.length,
    compares: conditions.some((it) => comparisons.has(questionOf(it))),
    bracket: conditions.some((it) => questionOf(it) === 'light'),
  })
  const power =
    nothingToTry !== null || margin === null
      ? []
      : await tryPlan({
          sessions: wanted.sessions,
          vesselsPerLevel: wanted.vesselsPerLevel,
          margin,
          confidence,
          sdOfDifferences: spread.sd,
          noise,
          seed,
          trials: wanted.trials,
        })
  return {
    ...countPlan(wanted, { levels: factor.levels, others }, bench),
    power,
    nothingToTry,
    trials: wanted.trials,
    seed,
    margin,
    confidence,
    sdOfDifferences: spread.sd,
    sdFrom: spread.from,
    noise,
    noiseFrom:
      wanted.noise === undefined
        ? 'Five spots with an instrument, read twice, differ by about 0.3.'
        : 'As you gave it.',
  }
}

type TestedCondition = Asking

function whyNothing(
  tested: TestedCondition | undefined,
  {
    levels,
    bracket,
    compares,
  }: { readonly levels: number; readonly bracket: boolean; readonly compares: boolean },
): string | null {
  if (bracket) return 'A bracket between blue wools is read off, not tested; there is nothing to try.'
  if (!tested && compares)
    return 'What is tried here is “as good as”. How many sessions “better than” or “the same as” needs is not reckoned; six or more are a good beginning.'
  if (!tested) {
    return 'This rule judges by limits that every unit must meet, not by chance; there is nothing to try. More sessions or lots make the claim wider.'
  }
  if (levels < 2) return 'One level has nothing to be held against; there is nothing to try.'
  return null
}

async function spreadFor(
  db: Kysely<Database>,
  trial: TrialRow,
  { key, margin, wanted }: { key: string; margin: number | null; wanted: number | undefined },
): Promise<{ sd: number; from: string }> {
  if (wanted !== undefined) return { sd: wanted, from: 'As you gave it.' }
  const earlier = earlierSpread(await earlierLosses(db, { key, exceptTrial: trial.id }))
  if (earlier) {
    const trials = earlier.trials === 1 ? 'an earlier trial' : `${earlier.trials} earlier trials`
    return { sd: Number(earlier.sd.toPrecision(2)), from: `The middle of what ${trials} of this showed.` }
  }
  return {
    sd: (margin ?? 1) / 2,
    from: 'Half the margin, until a trial of yours shows what it is.',
  }
}
