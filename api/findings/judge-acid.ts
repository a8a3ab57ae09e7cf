import type { Caution, Step } from '#api/contract/finding.ts'
import { leastAcid } from '#api/science/verdicts/every-unit.ts'
import type { LevelRow } from '#db/trials.ts'
import { asLevel, type Judgement } from './judge-ladder.ts'
import type { Judged } from './judged.ts'
import { levelName } from './ladder-rows.ts'
import { sideValues } from './side-values.ts'

/**
 * The least acid that is enough, by described limits: dye left in every session, mean L* against the next level. A rule
 * of the trade, not a test: the limit of the L* difference stands beside it.
 */
export function judgeAcid({
  factor,
  words,
  rule,
  main,
  levelled,
  histories,
  values,
  sides,
  record,
  skeins,
}: Judged): Judgement {
  const leftSide = sides.find((side) => side.condition.outcome === 'dye left')
  const left = leftSide ? sideValues(record.results, leftSide) : new Map<string, number>()
  const rows = levelled
    .filter(({ skein }) => skein.status !== 'lost')
    .map(({ skein, level }) => ({
      level: levelName(factor, level),
      session: histories.stayAt(skein, factor.stage)?.vessel.sessionId ?? '',
      left: left.get(skein.id),
      lightness: values.get(skein.id)?.value,
    }))
  const result = leastAcid(rows, {
    order: factor.levels.map((level) => levelName(factor, level)),
    ...(leftSide?.condition.atMost === undefined ? {} : { leftAtMost: leftSide.condition.atMost }),
    ...(main?.margin === undefined ? {} : { lighter: main.margin }),
  })
  const levels = new Map(factor.levels.map((level) => [levelName(factor, level), level]))
  const sessionsIn = new Set(
    rows.filter((row) => row.left !== undefined || row.lightness !== undefined).map((row) => row.session),
  ).size
  const planDone = sessionsIn >= rule.plannedSessions
  const answer = planDone ? result.verdict : 'not-settled'
  const least = planDone && result.least !== undefined ? levels.get(result.least) : undefined
  const top = factor.levels.at(-1)
  const headline = !planDone
    ? `Not settled: ${sessionsIn} of ${rule.plannedSessions} sessions.`
    : least
      ? `${capital(words.level(least))} is enough: it holds.`
      : result.notReached && top
        ? `Not reached: ${words.level(top)}, the most that was tried, does not hold.`
        : 'Not settled.'
  const limit = leftSide?.limit ?? '6\u00a0% or less'
  let stopped = false
  const steps = result.steps.flatMap((step): Step[] => {
    const level = levels.get(step.level)
    if (!level) return []
    const afterStop = stopped
    if (step.answer !== 'holds') stopped = true
    return [
      {
        levelId: level.id,
        label: words.tick(level),
        reference: false,
        n: step.sessions,
        mean: step.lightness ?? null,
        extra: step.toNext?.mean ?? null,
        lower: null,
        upper: step.toNext?.upper ?? null,
        netExtra: null,
        netUpper: null,
        limits: leftSide
          ? [
              {
                key: leftSide.key,
                label: leftSide.label,
                limit,
                end: 'low' as const,
                worst: step.mostLeft ?? null,
                worstText: step.mostLeft === undefined ? 'not recorded' : leftSide.said(step.mostLeft),
                all: skeins.flatMap((skein) =>
                  skein.levelId === level.id ? (skein.side[leftSide.key]?.text ?? []) : [],
                ),
                met: step.mostLeft !== undefined && step.mostLeft <= (leftSide.condition.atMost ?? 6),
                broken: step.mostLeft !== undefined && step.mostLeft > (leftSide.condition.atMost ?? 6),
                missing: 0,
              },
            ]
          : [],
        answer: step.answer,
        afterStop,
        says: afterStop ? 'after the stop' : `${said[step.answer]}: ${lower(step.why)}`,
      },
    ]
  })
  return {
    verdict: {
      answer,
      levelId: least?.id ?? null,
      subjectId: (least ?? top)?.id ?? null,
      headline,
      lead: leadOf(result, least, limit),
      counts: `${rows.length} skeins from ${new Set(skeins.map((skein) => skein.vesselId)).size} ${words.vessel.many} in ${sessionsIn} sessions.`,
      look: 1,
      sessionsIn,
      sessionsPlanned: rule.plannedSessions,
      estimate: null,
      window: least && top ? { from: asLevel(least), to: asLevel(top) } : null,
      windowText: least ? `from ${words.short(least)} upwards` : 'no level is enough',
      sessionsMore: planDone ? null : rule.plannedSessions - sessionsIn,
      settle: planDone ? '' : 'The rest of the plan is missing.',
    },
    steps,
    cautions: result.cautions.map(
      (text): Caution => ({ kind: 'note', title: 'Described, not tested', text }),
    ),
    method: [
      `Dye left ${limit} in every session; mean L* within ${(main?.margin ?? 1).toFixed(1)} of the next level. A rule of the trade, not a test: no interval decides, and the limit of the L* difference stands beside it.`,
    ],
  }
}

function leadOf(result: ReturnType<typeof leastAcid>, least: LevelRow | undefined, limit: string): string {
  const step = result.steps.find(
    (it) => least !== undefined && (it.level === least.value || it.level === least.label),
  )
  if (!step)
    return result.notReached
      ? `Dye left or lightness is outside its limit even there (dye left ${limit}).`
      : ''
  const next = step.toNext
    ? ` Its L* is ${step.toNext.mean.toFixed(1)} over the next level’s${step.toNext.upper === undefined ? '' : ` (upper 95 % limit ${step.toNext.upper.toFixed(1)})`}.`
    : ''
  return `Most dye left in any session: ${step.mostLeft === undefined ? 'not recorded' : `${step.mostLeft}\u00a0%`}; the limit is ${limit}.${next}`
}

const said = { holds: 'holds', 'does-not-hold': 'does not hold', 'not-settled': 'not settled' } as const

/** A sentence as the end of another. */
const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1).replace(/\.$/, '')
const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
