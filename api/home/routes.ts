import { createRoute } from '@hono/zod-openapi'
import type { Kysely } from 'kysely'
import type { Finding } from '#api/contract/finding.ts'
import { Home } from '#api/contract/home.ts'
import { findingOf } from '#api/findings/find.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import { groupBy } from '#api/science/group-by.ts'
import {
  benchSessions,
  dueExposures,
  type OpenTrialRow,
  openTrials,
  readAtWear,
  rulesOfTrials,
} from '#db/home.ts'
import type { Database, RuleCondition } from '#db/tables.ts'
import { ruleInForce } from '#db/trials.ts'
import { dueOf } from './due.ts'
import { presentNewest, presentOpenTrial } from './open-trial.ts'

/** So many open trials are shown, and of so many the finding is worked out. */
const mostTrials = 50
const mostFindings = 16

const shown = createRoute({
  method: 'get',
  path: '/',
  tags: ['home'],
  summary: 'What is due, the open trials, the newest finding',
  responses: { 200: json(Home, 'The first page') },
})

/** `/api/home`. A finding is worked out anew only when something that it is made of has changed. */
export function homeRoutes(db: Kysely<Database>) {
  const kept = new Map<string, { readonly stamp: string; readonly finding: Finding }>()
  const findingFor = async ({ id, stamp, results }: OpenTrialRow): Promise<Finding | undefined> => {
    if (results === 0) return undefined
    const before = kept.get(id)
    if (before?.stamp === stamp) return before.finding
    const finding = await findingOf(db, id)
    kept.set(id, { stamp, finding })
    return finding
  }
  return newRoutes().openapi(shown, async (c) => {
    const trials = await openTrials(db, { most: mostTrials })
    const ids = trials.map(({ id }) => id)
    const sessions = await benchSessions(db, ids)
    const rules = new Map<string, { planned: number; judges: RuleCondition | undefined }>()
    const findings = new Map<string, Finding>()
    const editions = groupBy(await rulesOfTrials(db, ids), (it) => it.trialId)
    for (const [i, trial] of trials.entries()) {
      const rule = ruleInForce(editions.get(trial.id) ?? [])
      if (rule) rules.set(trial.id, { planned: rule.plannedSessions, judges: rule.conditions[0] })
      const finding = i < mostFindings ? await findingFor(trial) : undefined
      if (finding) findings.set(trial.id, finding)
    }
    for (const id of kept.keys()) if (!ids.includes(id)) kept.delete(id)
    const judges = new Map([...rules].flatMap(([id, it]) => (it.judges ? [[id, it.judges]] : [])))
    const finding = newestOf(trials, findings)
    return c.json(
      {
        due: dueOf(trials, {
          sessions,
          readAt: await readAtWear(db, ids),
          exposures: await dueExposures(db, ids),
          judges,
        }),
        open: trials.map((trial) =>
          presentOpenTrial(
            trial,
            sessions.filter((it) => it.trialId === trial.id),
            { finding: findings.get(trial.id), planned: rules.get(trial.id)?.planned },
          ),
        ),
        newest: finding ? presentNewest(finding) : null,
      },
      200,
    )
  })
}

/** Of findings that came in together, one with colours to show; else the newest. */
function newestOf(
  trials: readonly OpenTrialRow[],
  findings: ReadonlyMap<string, Finding>,
): Finding | undefined {
  const answered = trials.filter(({ id }) => findings.get(id)?.verdict != null)
  const together = answered.filter(({ last }) => last?.getTime() === answered[0]?.last?.getTime())
  const shown = together.find(({ id }) => findings.get(id)?.levels.some(({ after }) => after !== null))
  const newest = shown ?? answered[0]
  return newest && findings.get(newest.id)
}

export type HomeRoutes = ReturnType<typeof homeRoutes>
