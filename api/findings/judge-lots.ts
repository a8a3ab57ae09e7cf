import type { Caution, Step } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { wearInWords, wearKey } from '#api/contract/wear.ts'
import { gradeText } from '#api/science/fastness/grades.ts'
import { groupBy } from '#api/science/group-by.ts'
import { type GradedLot, type WorstLot, worstLot } from '#api/science/verdicts/worst-lot.ts'
import type { RuleCondition } from '#db/tables.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Judgement } from './judge-ladder.ts'
import type { Judged } from './judged.ts'
import { lotKeys, type SideKey } from './side-values.ts'

/**
 * Claims by lot: the worst lot of each colourway decides, over every grade that the rule names, of the lot’s own skein
 * and of the parts cut from it.
 */
export function judgeLots(it: Judged): Judgement {
  const { factor, words, rule, record } = it
  const conditions = rule.conditions.filter((condition) => condition.statistic === 'worst lot')
  const judged = factor.levels.map((level) => {
    const lots = lotsOf(it, level, conditions)
    return {
      level,
      lots,
      result: lots.length > 0 ? worstLot(lots, { atLeast: conditions[0]?.atLeast ?? 4 }) : undefined,
    }
  })
  const known = judged.flatMap((one) => (one.result ? [{ level: one.level, result: one.result }] : []))
  const of = (answer: string) =>
    known.filter(({ result }) => result.verdict === answer).map(({ level }) => level.label)
  const [holds, not, open] = [of('holds'), of('does-not-hold'), of('not-settled')]
  const worst = known.reduce<(typeof known)[number] | undefined>(
    (a, b) => (a?.result.worst && b.result.worst && a.result.worst.grade <= b.result.worst.grade ? a : b),
    undefined,
  )
  const lotsN = judged.reduce((sum, one) => sum + one.lots.length, 0)
  return {
    verdict: {
      answer:
        not.length > 0 ? 'does-not-hold' : open.length > 0 || known.length === 0 ? 'not-settled' : 'holds',
      levelId: known.length === 1 && holds.length === 1 ? (known[0]?.level.id ?? null) : null,
      subjectId: worst?.level.id ?? null,
      headline: headlineOf(holds, not, open),
      lead: worst?.result.worst
        ? `The worst result is ${gradeText(worst.result.worst.grade)}: ${worst.result.worst.test}, ${words.label.toLowerCase()} ${worst.level.label}, lot ${worst.result.worst.lot}. The worst lot decides.`
        : 'No grade was recorded.',
      counts: `${record.skeins.filter((skein) => skein.cutFromId === null).length} skeins from ${lotsN} lots.`,
      look: 1,
      sessionsIn: Math.max(...judged.map((one) => one.lots.length)),
      sessionsPlanned: rule.plannedSessions,
      estimate: null,
      window: null,
      windowText: '',
      sessionsMore: null,
      settle: '',
    },
    steps: judged.map(
      ({ level, lots, result }): Step => stepOf(level, lots, { result, tests: lotKeys(conditions) }),
    ),
    cautions: lotCautions(known),
    method: ['The unit is the lot: yarn from one bath. The worst lot decides; no mean is taken of grades.'],
  }
}

/** A lot, and of each test that the rule names the worst grade over fibres and parts. */
type LotTested = GradedLot & { readonly worst: readonly (number | undefined)[] }

/** Every lot of a level with its grades: per outcome, fibre and wear, the worst of its skein and parts. */
function lotsOf(
  { factor, histories, record }: Judged,
  level: LevelRow,
  conditions: readonly RuleCondition[],
): LotTested[] {
  const skeins = record.skeins.filter(
    (skein) => histories.levelOf(skein, factor) === level.id && skein.status !== 'lost',
  )
  const byLot = groupBy(skeins, (skein) => histories.stayAt(skein, 'dye')?.vessel.id)
  const labels = new Map(record.vessels.map((vessel) => [vessel.id, vessel.label]))
  const lots: LotTested[] = []
  for (const [lotId, members] of byLot) {
    if (lotId === undefined) continue
    const ids = new Set(members.map((skein) => skein.id))
    const grades: Record<string, number | undefined> = {}
    const worst = conditions.map((condition) => {
      const results = record.results.filter(
        (result) =>
          ids.has(result.skeinId) &&
          result.kind === condition.outcome &&
          result.wearKey === wearKey(condition.wear) &&
          (condition.fibre === undefined || result.fibre === condition.fibre),
      )
      if (results.length === 0) grades[testName(condition)] = undefined
      for (const result of results) {
        const name = testName({ ...condition, ...(result.fibre ? { fibre: result.fibre } : {}) })
        grades[name] = Math.min(grades[name] ?? Infinity, result.value)
      }
      return results.length === 0 ? undefined : Math.min(...results.map((result) => result.value))
    })
    const label = labels.get(lotId) ?? ''
    lots.push({
      lot: label.startsWith(`${level.label} `) ? label.slice(level.label.length + 1) : label,
      grades,
      worst,
    })
  }
  return lots
}

function testName({ outcome, fibre, wear }: Pick<RuleCondition, 'outcome' | 'fibre' | 'wear'>): string {
  const what = `${outcomeKind(outcome).label.toLowerCase()}${fibre ? ` of ${fibre}` : ''}`
  return Object.keys(wear).length === 0 ? what : `${what} after ${wearInWords(wear)}`
}

function stepOf(
  level: LevelRow,
  lots: readonly LotTested[],
  { result, tests }: { result: WorstLot | undefined; tests: readonly SideKey[] },
): Step {
  return {
    levelId: level.id,
    label: level.label,
    reference: false,
    n: lots.length,
    mean: null,
    extra: null,
    lower: null,
    upper: null,
    netExtra: null,
    netUpper: null,
    limits: tests.map((test, place) =>
      testMet(
        test,
        lots.map(({ lot, worst }) => ({ lot, worst: worst[place] })),
      ),
    ),
    answer: result?.verdict ?? 'not-settled',
    afterStop: false,
    says: result ? saysOf(result) : 'not settled: no lot of it has grades',
  }
}

/** One test as a colourway met it: the worst of all its lots and fibres. */
function testMet(
  { key, label, limit, condition, said }: SideKey,
  grades: readonly { readonly lot: string; readonly worst: number | undefined }[],
): Step['limits'][number] {
  const known = grades.flatMap(({ worst }) => worst ?? [])
  const worst = known.length === 0 ? null : Math.min(...known)
  const missing = grades.length - known.length
  const enough = worst !== null && worst >= (condition.atLeast ?? 4)
  return {
    key,
    label,
    limit,
    end: 'low',
    worst,
    worstText: worst === null ? 'not recorded' : said(worst),
    all: grades.map((it) => `lot ${it.lot} ${it.worst === undefined ? 'not recorded' : said(it.worst)}`),
    met: enough && missing === 0,
    broken: worst !== null && !enough,
    missing,
  }
}

function saysOf(result: WorstLot): string {
  const { verdict, worst, lots, inBetween, why } = result
  const where = worst ? `${gradeText(worst.grade)} in ${worst.test}, lot\u00a0${worst.lot}` : ''
  if (verdict === 'holds') return `holds in all ${lots} lots`
  if (verdict === 'does-not-hold') return `does not hold: ${where}`
  return `not settled: ${inBetween ? where : why.charAt(0).toLowerCase() + why.slice(1).replace(/\.$/, '')}`
}

/** How little a few lots say, once for all colourways of as many lots. */
function lotCautions(known: readonly { level: LevelRow; result: WorstLot }[]): Caution[] {
  const met = known.filter(({ result }) => result.failingUpTo !== undefined)
  return [...groupBy(met, ({ result }) => result.lots)].map(([lots, group]) => ({
    kind: 'note',
    title: `${lots} lots are few`,
    text: `No failure of ${listed(group.map(({ level }) => level.label))} in ${lots} lots still leaves up to ${Math.round(100 * (group[0]?.result.failingUpTo ?? 1))}\u00a0% of lots that may fail (95\u00a0%).`,
  }))
}

function headlineOf(holds: readonly string[], not: readonly string[], open: readonly string[]): string {
  const parts = [
    ...(holds.length > 0 ? [`${listed(holds)} ${holds.length === 1 ? 'holds' : 'hold'}`] : []),
    ...(open.length > 0 ? [`${listed(open)} ${open.length === 1 ? 'is' : 'are'} not settled`] : []),
    ...(not.length > 0 ? [`${listed(not)} ${not.length === 1 ? 'does' : 'do'} not hold`] : []),
  ]
  const text = parts.join('; ')
  return text ? `${text.charAt(0).toUpperCase()}${text.slice(1)}.` : 'Not settled.'
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
