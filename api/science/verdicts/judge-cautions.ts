import { studentT } from '../statistics/student-t.ts'
import { dataCautions } from './data-cautions.ts'
import { designCautions } from './design-cautions.ts'
import { figure, listed, marginFigure, percent, sentenceCase } from './figure.ts'
import { type Judged, noiseShares } from './judged.ts'
import { mostUnequal } from './ladder-cautions.ts'
import type { LadderStep, SideLimit } from './level-rows.ts'
import type { Alternative, Caution } from './trial-verdict.ts'
import { blockWords, outcomeOf, shortOf, sideLabel, sideValue } from './words-of-trial.ts'

/**
 * Everything that a reader must know beside the verdict: first what limits it, then what explains it.
 *
 * @example
 * const trial = { rows: [], counts: [], oneUnit: [], unit: { kind: 'vessel', joined: [] }, words: { level: String } }
 * const result = { verdict: 'holds', reference: 75, referenceLimits: [], steps: [], cautions: [], method: 'paired' }
 * judgeCautions({ ...trial, result, sessionsIn: 4, look: 1, rule: { plannedSessions: 4, margin: 1 } }).map((it) => it.kind) // ['noise-unknown']
 */
export function judgeCautions(it: Judged, alternative: Alternative | undefined): Caution[] {
  return [
    ...designCautions(it),
    ...noiseCautions(it),
    ...dataCautions(it),
    ...spreadCautions(it),
    ...ladderStory(it),
    ...disagreement(alternative),
  ]
}

function noiseCautions({ noise, rule, cannotSeeMargin }: Judged): Caution[] {
  const margin = marginFigure(rule.margin)
  if (noise === undefined)
    return [
      {
        kind: 'noise-unknown',
        title: 'The noise is not known',
        text: 'No unchanged skein was read again. Noise makes an extra loss look smaller than it is, and it could not be taken off.',
      },
    ]
  if (cannotSeeMargin)
    return [
      {
        kind: 'noise-hides',
        title: 'Your way of measuring cannot see this margin',
        text: `Unchanged skeins move by ${figure(noise.floor)} (${noise.from}), over half the margin of ${margin}, so nothing can be said to hold.${noise.readingsNeeded === undefined ? '' : ` It takes ${noise.readingsNeeded} readings of each skein.`}`,
      },
    ]
  if (noise.floor > rule.margin * noiseShares.caution)
    return [
      {
        kind: 'near-noise',
        title: 'Near the noise',
        text: `Unchanged skeins move by ${figure(noise.floor)} (${noise.from}), over a third of the margin of ${margin}. Below that a difference is handling.`,
      },
    ]
  return []
}

function spreadCautions({ result, counts, rows, words }: Judged): Caution[] {
  const cautions: Caution[] = []
  const flat = result.steps.filter((step) => step.noSpread)
  if (flat.length > 0)
    cautions.push({
      kind: 'no-spread',
      title: 'No spread at all',
      text: `${sentenceCase(listed(flat.map((step) => shortOf(words, step.level))))}: every difference is the same. Were values copied or rounded?`,
    })
  if (
    result.method !== 'paired' &&
    result.cautions.some((text) => text.includes(`more than ${mostUnequal} times`))
  )
    cautions.push({
      kind: 'spreads-differ',
      title: 'Spreads differ',
      text: `The spread of some levels is more than ${mostUnequal} times that of others, and this method takes one for all. Look at the paired result.`,
    })
  const few = counts.every((count) => count.units === 0) && rows.length > 0
  if (few) cautions.push({ kind: 'no-result', title: 'Nothing is read yet', text: 'No skein has a result.' })
  return cautions
}

/** What happened on the ladder: where the steps stopped, and what closes the window from above. */
function ladderStory(it: Judged): Caution[] {
  const { result, words, rule, sessionsIn } = it
  if (sessionsIn < rule.plannedSessions) return notAsGood(it)
  const cautions: Caution[] = []
  const broken = result.referenceLimits.filter((limit) => limit.end === 'low' && limit.broken)
  if (broken.length > 0)
    cautions.push({
      kind: 'reference-breaks',
      title: 'The reference breaks a limit',
      text: `${sentenceCase(shortOf(words, result.reference))}: ${listed(broken.map((limit) => `${sideLabel(words, limit.side)} was ${sideValue(words, limit.side, limit.worst ?? 0)}`))}. What it is held against does not meet the rule itself.`,
    })
  const stop = result.steps.find((step) => step.answer !== 'holds')
  if (stop?.answer === 'does-not-hold')
    cautions.push({
      kind: 'stop',
      title: `${sentenceCase(shortOf(words, stop.level))} does not hold`,
      text: whyStopped(it, stop),
    })
  else if (stop !== undefined && result.verdict === 'holds')
    cautions.push({
      kind: 'open-below',
      title: `${sentenceCase(shortOf(words, stop.level))} is not settled`,
      text:
        stop.lower === undefined || stop.upper === undefined
          ? `${stop.unavailable ?? 'It cannot be judged.'} The steps stopped there.`
          : `Its ${outcomeOf(words)} is between ${figure(stop.lower)} and ${figure(stop.upper)}: neither shown to hold nor shown not to. The steps stopped there.`,
    })
  cautions.push(...windowStory(it), ...notAsGood(it))
  return cautions
}

function whyStopped({ words, result }: Judged, step: LadderStep): string {
  const reasons = [
    ...(step.upper === undefined ? [] : [`its ${outcomeOf(words)} may be as high as ${figure(step.upper)}`]),
    ...step.limits
      .filter((limit) => limit.end === 'low' && limit.broken && limit.worst !== undefined)
      .map(
        (limit) =>
          `${sideLabel(words, limit.side)} came to ${sideValue(words, limit.side, limit.worst ?? 0)}`,
      ),
  ]
  const below = result.steps.indexOf(step) < result.steps.length - 1
  return `${sentenceCase(listed(reasons))}.${below ? ' The steps stopped there: what lies below is shown, not claimed.' : ''}`
}

function windowStory({ result, words, rule }: Judged): Caution[] {
  const high = (rule.limits ?? []).filter((limit) => limit.end === 'high')
  if (high.length === 0 || result.least === undefined) return []
  const names = listed(high.map((limit) => sideLabel(words, limit.side)))
  if ('unavailable' in result.window)
    return [
      {
        kind: 'window',
        title: 'The window is empty',
        text: `${sentenceCase(names)} is over its limit wherever the colour holds: there is no level between too little and too much.`,
      },
    ]
  const { from, to } = result.window
  if (to === result.reference) return []
  return [
    {
      kind: 'window',
      title: `${sentenceCase(names)} ${high.length === 1 ? 'sets' : 'set'} the upper end`,
      text: `Above ${shortOf(words, to)} it passed ${listed(high.map((limit) => limitValue(limit, words)))} in at least one ${blockWords(words).one}, or was not recorded. ${from === to ? `The window is ${shortOf(words, to)} and nothing wider.` : `The window is ${shortOf(words, from)} to ${shortOf(words, to)}.`}`,
    },
  ]
}

function limitValue(limit: SideLimit, words: Judged['words']): string {
  return sideValue(words, limit.side, limit.atMost ?? limit.atLeast ?? 0)
}

function notAsGood({ result, words, rule }: Judged): Caution[] {
  if (result.verdict !== 'not-settled') return []
  // The largest extra loss that is neither shown nor ruled out is the one that is most easily misread.
  const step = result.steps
    .filter((it) => it.answer === 'not-settled' && it.se !== undefined && it.se > 0)
    .sort((a, b) => (b.extra ?? 0) - (a.extra ?? 0))
    .find((it) => it.lower !== undefined && it.lower <= rule.margin)
  if (step?.extra === undefined || step.se === undefined || step.df === undefined) return []
  const { upper } = studentT(Math.abs(step.extra / step.se), step.df)
  const p = 2 * upper
  const more = `${figure(Math.abs(step.extra))} ${step.extra < 0 ? 'less' : 'more'}`
  return [
    {
      kind: 'not-as-good',
      title: 'Not settled is not “as good as”',
      text: `${sentenceCase(shortOf(words, step.level))}: ${more} than ${shortOf(words, result.reference)}, p = ${p < 0.01 ? p.toPrecision(1) : p.toFixed(2)}; one-sided limit at ${percent(result.confidence)} ${figure(step.upper ?? step.extra)}. That shows neither that there is too large a difference nor that there is none.`,
    },
  ]
}

function disagreement(alternative: Alternative | undefined): Caution[] {
  // A method without an answer contradicts nothing.
  const answers = alternative?.steps.some((step) => step.upper !== undefined)
  if (alternative === undefined || alternative.agrees || !answers) return []
  return [{ kind: 'methods-disagree', title: 'Two methods disagree', text: alternative.sentence }]
}
