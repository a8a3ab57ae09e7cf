import { outcomeKind } from '#api/contract/outcomes.ts'
import { counted, figure, margin, percent, sentenceCase } from '#api/words/numbers.ts'
import type { ArmAsked } from './arm-asked.ts'
import type { GainVerdict } from './better-verdict.ts'
import type { GainFound } from './gain-over-control.ts'

/** Why an arm is better, is not, or why it is not settled: one sentence. */
export function reasonOfGain(
  { asked, name, control, least, units, missing }: ArmAsked,
  { n, deciding, unavailable }: GainFound,
  { because }: GainVerdict,
  noiseStop: string | undefined,
): string {
  const { unit = '' } = outcomeKind(asked.condition.outcome)
  const [subject, amount] = [sentenceCase(name), unit === '' ? '' : ` ${unit}`]
  const wanted = least > 0 ? `; more than ${margin(least)} was asked` : ''
  if (because === 'one unit')
    return `${subject} or ${control} was done only once, so nothing can be said of it.`
  if (because === 'few blocks')
    return `${sentenceCase(counted(n, units))} with both ${name} and ${control}: three or more are needed.`
  if (because === 'missing')
    return `${counted(missing, { one: 'result', many: 'results' })} of ${name} or ${control} ${missing === 1 ? 'is' : 'are'} not recorded yet.`
  if (because === 'noise' && noiseStop !== undefined) return noiseStop
  if (!deciding) return `Nothing can be said of ${name} yet. ${unavailable ?? ''}`.trim()
  const { gain, lower, upper } = deciding
  const places = placesOf(lower, upper, least)
  const said = (value: number) => figure(value, places)
  const range = `${said(gain)}${amount} (${said(lower)} to ${said(upper)})`
  if (because === 'better') return `${subject} is better than ${control} by ${range}${wanted}.`
  if (because === 'worse')
    return `${subject} is worse than ${control} by ${said(-gain)}${amount} (${said(-upper)} to ${said(-lower)}).`
  if (because === 'no better')
    return `${subject} is no better than ${control}: the gain is ${range}${wanted}.`
  return `Not shown to be better: the gain of ${name} is ${range}${wanted}.`
}

/** One place where the limits are wide, two where they are near; one more where a limit would read as the least gain itself. */
function placesOf(lower: number, upper: number, least: number): number {
  const places = upper - lower < 2 ? 2 : 1
  const reads = (value: number) => figure(value, places) === figure(least, places)
  return reads(lower) || reads(upper) ? places + 1 : places
}

/** How a gain was worked out. */
export function methodOfGain(
  { asked, control, units }: ArmAsked,
  { adjusted, arms, signFlipP, signFlipPatterns, raw, net }: GainFound,
): string[] {
  if (!raw) return []
  const { confidence, method, noise } = asked
  const within = method === 'pooled' ? 'independent units, one spread' : `differences within ${units.many}`
  const limits = {
    none: `Student’s t on ${within}`,
    dunnett: `Dunnett’s limits for ${arms} arms against ${control}, ${method === 'pooled' ? 'one-way' : `by a linear model of ${units.one} and arm`}`,
    bonferroni: `Bonferroni’s limits for ${arms} arms against ${control}, by a linear model of ${units.one} and arm`,
  }[adjusted]
  return [
    `${limits}; each limit one-sided at ${percent(confidence)}.`,
    ...(net && noise
      ? [
          `Noise (root mean square ${figure(noise.rms)}, upper 80\u00a0% limit ${figure(noise.upperRms)}) makes small values longer: the lower limit is the smallest of raw, net and net by that limit, the upper the larger of raw and net.`,
        ]
      : []),
    ...(signFlipP !== undefined && signFlipPatterns !== undefined
      ? [
          `By flipping signs, all ${signFlipPatterns} patterns, p = ${figure(signFlipP, 4)} one-sided; it stands beside and decides nothing.`,
        ]
      : []),
  ]
}
