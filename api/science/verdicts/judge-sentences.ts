import { counted, figure, marginFigure, percent, sentenceCase } from './figure.ts'
import type { Judged } from './judged.ts'
import type { LadderMethod, LadderStep } from './level-rows.ts'
import type { LevelCount, TrialVerdict } from './trial-verdict.ts'
import { blockWords, outcomeOf, shortOf, unitWords, vesselWords } from './words-of-trial.ts'

/**
 * The headline, the lead with interval, mean and margin, and the line of counts.
 *
 * @example
 * const trial = { rows: [], counts: [], words: { level: (level) => `${level} minutes of steam` }, subject: 35, sessionsIn: 4, look: 1 }
 * const result = { verdict: 'holds', reference: 75, steps: [], window: { from: 35, to: 75 } }
 * judgeSentences({ ...trial, result, rule: { plannedSessions: 4, margin: 1 } }).headline // '35 minutes of steam holds.'
 */
export function judgeSentences(it: Judged, settle: TrialVerdict['settle']): TrialVerdict['sentences'] {
  return { headline: headline(it, settle), lead: lead(it), countsLine: countsLine(it) }
}

function headline(
  { result, words, subject, rule, sessionsIn }: Judged,
  settle: TrialVerdict['settle'],
): string {
  const block = blockWords(words)
  if (result.verdict === 'not-settled') {
    if (sessionsIn < rule.plannedSessions)
      return `Not settled: ${sessionsIn} of ${counted(rule.plannedSessions, block)}.`
    if (settle?.sessionsMore !== undefined)
      return `Not settled: about ${settle.sessionsMore} more ${settle.sessionsMore === 1 ? block.one : block.many}.`
    return 'Not settled.'
  }
  const level = sentenceCase(subject === undefined ? 'no level' : words.level(subject))
  if (result.verdict === 'does-not-hold') return `${level} does not hold.`
  return 'unavailable' in result.window ? `${level} holds, but the window is empty.` : `${level} holds.`
}

function lead({ result, words, subject, rule, look }: Judged): string {
  const step = result.steps.find((it) => it.level === subject)
  const margin = `The margin is ${marginFigure(rule.margin)}.`
  if (step === undefined) return margin
  const second =
    look > 1
      ? ` This is ${look === 2 ? 'a second look' : `look ${look}`}, so the limits are at ${percent(result.confidence)}.`
      : ''
  const against = `Against ${shortOf(words, result.reference)} `
  const whose =
    result.verdict === 'not-settled'
      ? `the ${outcomeOf(words)} of ${shortOf(words, step.level)}`
      : `its ${outcomeOf(words)}`
  return `${against}${whose} is ${interval(step, result.confidence, unitWords(words))}. ${margin}${second}`
}

function interval(step: LadderStep, confidence: number, unit: string): string {
  if (step.extra === undefined) return 'not known yet'
  if (step.lower === undefined || step.upper === undefined)
    return `${figure(step.extra)} ${unit}, without limits: ${step.unavailable ?? ''}`.replace(/\.$/, '')
  const width = percent(2 * confidence - 1)
  return `between ${figure(step.lower)} and ${figure(step.upper)} ${unit} (${width} interval, mean ${figure(step.extra)})`
}

function countsLine({ rows, counts, result, words, subject, noise, rule }: Judged): string {
  const shown = counts.filter((it) => it.level === subject || it.level === result.reference)
  const sum = (of: (count: LevelCount) => number): number => shown.reduce((total, it) => total + of(it), 0)
  const levels = new Set(shown.map((it) => String(it.level)))
  const own = rows.filter(
    (row) => levels.has(String(row.level)) && row.lost === undefined && row.value !== undefined,
  )
  const sessions = new Set(own.map((row) => row.session)).size
  const sessionWords =
    (rule.block ?? 'session') === 'session' ? blockWords(words) : { one: 'session', many: 'sessions' }
  const readings = sum((it) => it.readings)
  const spots = new Set(own.map((row) => row.spots))
  const [spotsEach] = spots
  const parts = [
    `${counted(
      sum((it) => it.skeins),
      { one: 'skein', many: 'skeins' },
    )} from ${counted(
      sum((it) => it.vessels),
      vesselWords(words),
    )} in ${counted(sessions, sessionWords)}`,
    ...(readings > 0
      ? [
          `${counted(readings, { one: 'reading', many: 'readings' })}${spots.size === 1 && spotsEach !== undefined && spotsEach > 1 ? ` of ${counted(spotsEach, { one: 'spot', many: 'spots' })}` : ''}`,
        ]
      : []),
  ]
  const lost = sum((it) => it.lost.length)
  return `${parts.join(', ')}.${lost > 0 ? ` ${lost} lost.` : ''}${noise === undefined ? '' : ` Noise ${figure(noise.floor, 1)}.`}`
}

const methods: Readonly<Record<LadderMethod, string>> = {
  paired: 'Paired t on differences within',
  model: 'A model with a level for each treatment and the session kept in as chance, over',
  pooled: 'One-way comparison of units with one common spread, over',
}

/**
 * How the verdict was worked out, in words.
 *
 * @example
 * const result = { method: 'paired', confidence: 0.95, reference: 75 }
 * methodInWords({ result, words: { level: String }, unit: { kind: 'vessel' }, rule: { margin: 1 }, sessionsIn: 4 }).slice(0, 50) // 'Paired t on differences within 4 sessions, in a fi'
 */
export function methodInWords({ result, words, noise, unit, rule, sessionsIn }: Judged): string {
  const block = blockWords(words)
  const sentences = [
    `${methods[result.method]} ${counted(sessionsIn, block)}, in a fixed order from ${shortOf(words, result.reference)} down, so that no correction for several comparisons is due.`,
    `The unit is the ${unit.kind}. One-sided limits at ${percent(result.confidence)}; margin ${marginFigure(rule.margin)}.`,
  ]
  if (noise !== undefined)
    sentences.push(
      `A level must hold as it was read and with the noise taken off (${figure(noise.rms)}, from ${noise.from}).`,
    )
  return sentences.join(' ')
}
