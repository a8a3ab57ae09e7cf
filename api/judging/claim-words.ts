import { comparisons, leastGainOf } from '#api/contract/question.ts'
import {
  armsHeadline,
  coveredHeadline,
  ladderHeadline,
  lightHeadline,
  limitsHeadline,
  type Said,
  seesHeadline,
  standardHeadline,
} from '#api/words/headlines.ts'
import { type FactorWords, spokenOf, wordsOfFactor } from '#api/words/levels.ts'
import { counted, figure, listed, margin, percent, sentenceCase } from '#api/words/numbers.ts'
import { outcomeInSentence } from '#api/words/outcomes.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer, Estimate } from './answer.ts'
import type { Claim } from './claim.ts'
import type { LevelClaim } from './level-claims.ts'
import type { StratumClaim } from './stratum-claim.ts'

/** What a claim says, in the trade’s words: of the whole, and of each stratum. */
export type ClaimWords = {
  readonly headline: string
  /** What it means at the stove, then the numbers. */
  readonly lead: string
  readonly strata: readonly StratumWords[]
}

export type StratumWords = {
  /** “silk”; empty where one thing only is varied. */
  readonly name: string
  readonly headline: string
  readonly lead: string
  /** “8 skeins from 8 packets in 4 sessions.” */
  readonly counts: string
  /** What would settle it; empty where it is settled. */
  readonly settle: string
}

type Wordless = Omit<Claim, 'words'>

export function wordsOfClaim(claim: Wordless): ClaimWords {
  const words = wordsAsTheyStand(claim)
  const { without } = claim
  if (!without?.worse) return words
  // The worse of the two answers stands in the headline, and says why.
  return {
    ...words,
    headline: withSuffix(without.headline, ' (without the changes made after reading)'),
    lead: `As the record stands now: “${words.headline}” ${words.lead}`.trim(),
  }
}

function wordsAsTheyStand(claim: Wordless): ClaimWords {
  const strata = claim.strata.map((it) => wordsOfStratum(claim, it))
  const [only] = strata
  const suffix = suffixOf(claim)
  if (strata.length === 1 && only) {
    return { headline: withSuffix(saidOn(only), suffix), lead: only.lead, strata }
  }
  return {
    headline: withSuffix(strata.map(saidOn).join(' '), suffix),
    lead: strata
      .map(({ name, lead }) => (lead === '' ? '' : `${name}: ${lead}`))
      .filter((it) => it !== '')
      .join(' '),
    strata,
  }
}

// Our own first words only: a person’s own words keep their capitals.
const ours = /^(?:Not|No|None|Nothing|Neither|The|This)\b/

/** A headline that names the stratum it speaks of: “On silk, not settled: 2 of 3 sessions.” */
export function saidOn({ name, headline }: Pick<StratumWords, 'name' | 'headline'>): string {
  return name === '' ? headline : `${name}, ${headline.replace(ours, (word) => word.toLowerCase())}`
}

/** What must stand in the headline itself, after it. */
function suffixOf({ timing, rule }: Wordless): string {
  if (rule.lockedAt === null) return ''
  if (timing === 'after') return ' (rule written after reading)'
  return timing === 'dates-unknown' ? ' (dates not recorded)' : ''
}

function withSuffix(headline: string, suffix: string): string {
  return suffix === '' ? headline : `${headline.replace(/\.$/, '')}${suffix}.`
}

/** The other factors’ levels that a stratum is of, as a sentence begins with them: “On silk”; empty where there are none. */
export function stratumName({ stratum }: Pick<StratumClaim, 'stratum'>): string {
  const [first, ...others] = stratum.parts
  if (!first) return ''
  return [spokenOf(first), ...others.map(({ factor, level }) => wordsOfFactor(factor).level(level))].join(
    ', ',
  )
}

function wordsOfStratum(claim: Wordless, it: StratumClaim): StratumWords {
  const words = wordsOfFactor(claim.factor, claim.trial.record.vessels)
  return {
    name: stratumName(it),
    headline: headlineOf(claim, it, words),
    lead: leadOf(claim, it, words),
    counts: countsOf(it, words),
    settle: settleOf(claim, it),
  }
}

function headlineOf(claim: Wordless, it: StratumClaim, words: FactorWords): string {
  const { shape, leading, levels, reference } = it
  const blocked = blockedBy(claim, it)
  const named = (level: LevelRow) => words.level(level)
  const judged = levels.filter(
    ({ isReference, answers, level }) => !isReference && answers.length > 0 && level,
  )
  const said = (claims: readonly LevelClaim[]): Said[] => claims.map((one) => saidOf(one, claim, words))
  if (shape === 'whole')
    return seesHeadline(
      it.answer,
      leading?.margin ?? (leading?.atMost === undefined ? undefined : leading.atMost * 2),
    )
  if (shape === 'ladder') {
    const first = it.levels.find(
      ({ level, isReference, answer }) => level && !isReference && answer !== null,
    )?.level
    const compares = leading !== undefined && comparisons.has(leading.question)
    const top = judged[0]
    const headline = ladderHeadline({
      answer: it.answer,
      least: it.least ? named(it.least) : undefined,
      first: it.referenceBreaks && reference ? named(reference) : first ? named(first) : undefined,
      notReached: !compares && it.answer === 'does-not-hold' && top?.level ? named(top.level) : undefined,
      referenceBreaks: it.referenceBreaks,
      bad: words.enough,
      windowEmpty: it.least !== undefined && 'unavailable' in it.window && it.window.unavailable !== '',
      more: it.more,
      blocked,
    })
    return withReference(`${headline}`, it, words)
  }
  if (shape === 'arms' && leading && reference) {
    const question = leading.question as 'no-worse' | 'alike' | 'better'
    return armsHeadline(question, said(judged), {
      against: named(reference),
      within: leading.margin,
      blocked,
    })
  }
  if (shape === 'arms') return 'Not settled: the rule does not say which level the others are held against.'
  const main = leading?.question
  if (main === 'light') return lightHeadline(said(judged), leading?.atLeast)
  if (main === 'open-against-covered') return coveredHeadline(said(judged), leading?.margin)
  if (main === 'to-standard')
    return standardHeadline(said(judged.filter(({ answers }) => answers.length > 0)), {
      within: leading?.atMost ?? leading?.margin,
    })
  if (blocked !== undefined && judged.every(({ answer }) => answer === 'not-settled') && !leading?.byLot)
    return `Not settled: ${blocked}`
  return limitsHeadline(said(judged), judged[0]?.answers[0]?.units ?? { one: 'session', many: 'sessions' })
}

/** Where a gate keeps everything from being settled, that is the headline; else undefined. */
function blockedBy({ rule }: Wordless, { gates, blocks, answer }: StratumClaim): string | undefined {
  if (answer !== 'not-settled') return undefined
  const stop = gates.find(({ stops }) => stops === 'every answer')
  if (stop) return withoutCapital(stop.says)
  const plan = gates.find(({ gate, open }) => gate === 'plan' && !open)
  if (plan)
    return `${blocks.planned.length} of ${counted(rule.plannedSessions, { one: 'session', many: 'sessions' })}.`
  if (rule.lockedAt === null) return 'the rule is not locked.'
  const closed = gates.find(({ stops }) => stops === 'holds')
  return closed ? withoutCapital(closed.says) : undefined
}

// Only sentences of our own come here; none begins with a person’s word.
const withoutCapital = (sentence: string): string =>
  /^(The|No|Every|Before|Colour|Fewer)\b/.test(sentence)
    ? sentence.charAt(0).toLowerCase() + sentence.slice(1)
    : sentence

function saidOf(claim: LevelClaim, { rule }: Wordless, words: FactorWords): Said {
  const deciding = claim.answers.find(({ answer }) => answer === claim.answer) ?? claim.answers[0]
  const failing = claim.answers.find(({ answer, limit }) => answer === 'does-not-hold' && limit !== null)
  return {
    name: claim.level ? words.level(claim.level) : '',
    answer: claim.answer ?? 'not-settled',
    failed: failing ? failedInWords(failing) : undefined,
    placed: deciding?.placed,
    n: deciding?.n ?? 0,
    planned: rule.plannedSessions,
  }
}

/** A limit that was not met, as it was seen: “staining of wool 2-3”. */
function failedInWords({ condition, limit }: Answer): string {
  const at = limit?.worstAt ? ` (${limit.worstAt})` : ''
  if (condition.question === 'to-standard') return `${limit?.worstText ?? ''} from the standard${at}`
  return `${outcomeInSentence(condition.outcome, condition.fibre)} ${limit?.worstText ?? ''}${at}`
}

/** The reference itself: over 3 ΔE00 it is the headline that neither is fast. */
const fastUpTo = 3

function withReference(headline: string, it: StratumClaim, words: FactorWords): string {
  const mean = referenceMean(it)
  if (it.answer !== 'holds' || mean === undefined || mean <= fastUpTo || !it.least || !it.reference)
    return headline
  return `${sentenceCase(words.short(it.least))} is as good as ${words.short(it.reference)}; both changed by ${figure(mean, 1)}: neither is fast.`
}

/** What the reference lost on average, where the comparison knows it. */
export function referenceMean({ levels }: Pick<StratumClaim, 'levels'>): number | undefined {
  for (const { answers } of levels)
    for (const { figures, condition } of answers) {
      const mean = figures.referenceMean
      if (condition.outcome === 'dE00' && typeof mean === 'number') return mean
    }
  return undefined
}

/** The estimate that a headline speaks of: of its subject under the comparison. */
export function estimateOf(it: Pick<StratumClaim, 'levels' | 'subject' | 'leading'>): Estimate | null {
  const claim = it.levels.find(({ level }) => (level?.id ?? null) === (it.subject?.id ?? null))
  const answer =
    claim?.answers.find(({ condition }) => condition === it.leading) ??
    claim?.answers.find(({ estimate }) => estimate !== null)
  return answer?.estimate ?? null
}

function leadOf(claim: Wordless, it: StratumClaim, words: FactorWords): string {
  return [stoveSentence(it, words), numbersSentence(it, words), lookSentence(claim), described(it)]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

/** What to do at the stove: how far not to go, or what to dye next. */
function stoveSentence(it: StratumClaim, words: FactorWords): string {
  if (it.shape !== 'ladder') {
    const open = it.levels.find(({ level }) => level?.id === it.subject?.id)
    const reason = open?.answers.find(({ answer }) => answer === open.answer)?.reason ?? ''
    return it.answer === 'holds' ? '' : reason
  }
  const stop = it.levels.find(
    ({ answer, afterStop, isReference }) =>
      !isReference && !afterStop && answer !== null && answer !== 'holds',
  )
  if (it.answer === 'holds' && stop?.level) {
    const why = stop.answers.find(({ answer }) => answer === stop.answer)
    if (stop.answer === 'does-not-hold' && why)
      return `Do not go to ${words.short(stop.level)}: ${why.limit ? failedInWords(why) : comparisons.has(why.condition.question) ? 'it changed more than you allowed' : why.reason.replace(/\.$/, '')}.`
    return `${sentenceCase(words.short(stop.level))} is not settled.`
  }
  if (it.answer === 'does-not-hold' && stop) {
    return stop.answers.find(({ answer }) => answer === 'does-not-hold')?.reason ?? ''
  }
  if (it.answer === 'not-settled' && stop) {
    return stop.answers.find(({ answer }) => answer === 'not-settled')?.reason ?? ''
  }
  return ''
}

function numbersSentence(it: StratumClaim, words: FactorWords): string {
  const estimate = estimateOf(it)
  const { leading, reference, subject } = it
  if (!estimate || !leading || !reference || !comparisons.has(leading.question)) return ''
  const bound =
    leading.question === 'better'
      ? `The least gain worth having is ${margin(leastGainOf(leading))}.`
      : leading.margin === undefined
        ? ''
        : `You allowed ${margin(leading.margin)}.`
  const whose = it.answer === 'not-settled' && subject ? words.short(subject) : 'it'
  const what =
    leading.outcome === 'dE00'
      ? 'changed'
      : `differed in ${outcomeInSentence(leading.outcome, leading.fibre)}`
  return `Against ${words.short(reference)} ${whose} ${what} by ${figure(estimate.lower)} to ${figure(estimate.upper)}${estimate.unit === '' ? '' : ` ${estimate.unit}`}${leading.question === 'better' ? '' : ' more'} (${percent(estimate.confidence)} interval, mean ${figure(estimate.value)}). ${bound}`.trim()
}

function lookSentence({ look, confidence, strata, strataInAll }: Wordless): string {
  const parts = [
    ...(look > 1
      ? [`This is look ${look} at this question, so the limits are stricter, at ${percent(confidence)}.`]
      : []),
    ...(strata.length === 1 && strataInAll > 1 && look === 1 && confidence > 0.95
      ? [`One of ${strataInAll} was chosen, so the limits are stricter, at ${percent(confidence)}.`]
      : []),
  ]
  return parts.join(' ')
}

/** What is described beside a limit and not shown, such as lightness within a margin of the next level. */
function described({ levels, least }: StratumClaim): string {
  if (!least) return ''
  const answers = levels.find(({ level }) => level?.id === least.id)?.answers ?? []
  return answers
    .filter(({ condition }) => condition.against === 'next level')
    .flatMap(({ cautions }) => cautions)
    .join(' ')
}

function countsOf({ rows, subject, reference, levels }: StratumClaim, words: FactorWords): string {
  const ids = new Set(
    subject
      ? [subject.id, ...(reference ? [reference.id] : [])]
      : levels.flatMap(({ level }) => level?.id ?? []),
  )
  const own = rows.filter(({ levelId, value }) => ids.has(levelId) && value !== undefined)
  if (own.length === 0) return ''
  const lost = rows.filter(
    ({ levelId, value, lost: why }) => ids.has(levelId) && value === undefined && why !== undefined,
  )
  const distinct = (of: (row: (typeof own)[number]) => string) => new Set(own.map(of)).size
  const readings = own.reduce((sum, { result }) => sum + (result?.readingsN ?? 0), 0)
  return `${listed([
    `${counted(
      distinct(({ skein }) => skein.id),
      { one: 'skein', many: 'skeins' },
    )} from ${counted(
      distinct(({ vessel }) => vessel),
      words.vessel,
    )} in ${counted(
      distinct(({ block }) => block),
      { one: 'session', many: 'sessions' },
    )}`,
    ...(readings > own.length ? [counted(readings, { one: 'reading', many: 'readings' })] : []),
  ])}.${lost.length > 0 ? ` ${lost.length} lost.` : ''}`
}

/** What would settle it: the rest of the plan, a control, the measuring error, more sessions. */
function settleOf({ rule }: Wordless, it: StratumClaim): string {
  if (it.answer !== 'not-settled') return ''
  const stop = it.gates.find(({ stops }) => stops !== 'nothing')
  if (stop) return stop.says
  if (rule.lockedAt === null) return 'Lock the rule first.'
  const subject = it.levels.find(({ level }) => (level?.id ?? null) === (it.subject?.id ?? null))
  const reason = subject?.answers.find(({ answer }) => answer === 'not-settled')?.reason ?? ''
  if (it.more === null) return reason
  return `${reason} About ${counted(it.more, { one: 'more session', many: 'more sessions' })} would settle it.`.trim()
}
