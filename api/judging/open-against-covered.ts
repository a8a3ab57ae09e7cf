import { blocksNeeded } from '#api/science/verdicts/blocks-needed.ts'
import { counted, figure, listed, margin as marginFigure, percent } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked, Engine } from './asked.ts'
import { halvesApart } from './halves-apart.ts'
import { fewestCards, type OpenAgainstCovered, openAgainstCovered } from './halves-over-cards.ts'
import { oneLotOnly, openHalves } from './open-halves.ts'

/** Each colour: its open halves against those that lay covered beside them. No reading from before is needed. */
export const judgeOpenAgainstCovered: Engine = (asked) => asked.levels.map((level) => ofLevel(asked, level))

function ofLevel(asked: Asked, level: LevelRow): Answer {
  const { condition, confidence, noise } = asked
  const margin = condition.margin ?? 1
  const halves = openHalves(asked, level)
  const pairs = halves
    .map((half) => ({ half, dE: halvesApart(asked, half.skein) }))
    // What was lost before it was read is not counted; what was read before it was lost is.
    .filter(({ half, dE }) => dE !== undefined || !half.lost)
  const lost = halves.length - pairs.length
  const found = openAgainstCovered(
    pairs.map(({ half, dE }) => ({ card: half.card.label, dE })),
    { margin, confidence, noise },
  )
  const { raw, net, interval, n } = found
  return {
    condition,
    levelId: level.id,
    answer: found.answer,
    reason: reasonOf(found, { margin, confidence }),
    n,
    units: { one: 'card', many: 'cards' },
    estimate:
      interval && raw.extra !== undefined
        ? { value: raw.extra, ...interval, confidence: 2 * confidence - 1, unit: 'ΔE00' }
        : null,
    table: {
      mean: raw.mean ?? null,
      extra: raw.extra ?? null,
      lower: raw.lower ?? null,
      upper: raw.upper ?? null,
      netExtra: net?.extra ?? null,
      netUpper: net?.upper ?? null,
      se: raw.se ?? null,
      df: raw.df ?? null,
    },
    limit: null,
    cautions: [
      ...(n === 0 ? [] : oneLotOnly(halves)),
      ...(lost === 0
        ? []
        : [
            `${lost} of ${counted(halves.length, { one: 'open half', many: 'open halves' })} lost before reading.`,
          ]),
    ],
    method: [
      'ΔE00 between the open and the covered half of one skein, read in one sitting; a card is one unit. One-sided limits of the mean by Student’s t.',
      'The measuring error is taken off each difference (√(ΔE² − r²)); the upper end is the largest of raw, net, and net of its 80\u00a0% upper limit, the lower end the smaller of raw and net.',
    ],
    figures: {},
    more: found.answer === 'not-settled' ? moreCards(found, { margin, confidence }) : null,
  }
}

function moreCards(
  { raw, n }: OpenAgainstCovered,
  it: { readonly margin: number; readonly confidence: number },
): number | null {
  if (n < fewestCards) return fewestCards - n
  const needed = blocksNeeded(raw, it)
  return 'blocks' in needed && needed.blocks > n ? needed.blocks - n : null
}

function reasonOf(
  { answer, raw, interval, n, blank, stopped }: OpenAgainstCovered,
  { margin, confidence }: { readonly margin: number; readonly confidence: number },
): string {
  const allowed = `${marginFigure(margin)} is allowed`
  if (raw.extra === undefined) return 'No open half was read together with its covered half.'
  const mean = `Open and covered halves differ by ${figure(raw.extra, 1)} on average`
  if (!interval)
    return raw.noSpread
      ? `${mean}, the same on every card: were values copied?`
      : `${mean}, on one card only.`
  if (answer === 'holds')
    return `${mean}, ${figure(interval.upper)} at most (${percent(confidence)}); ${allowed}.`
  if (answer === 'does-not-hold')
    return `${mean}, ${figure(interval.lower)} at least (${percent(confidence)}); ${allowed}.`
  if (stopped !== undefined) return stopped
  if (interval.upper >= margin) return `${mean}; it may be up to ${figure(interval.upper)}, and ${allowed}.`
  if (blank.length > 0) return `Not read on ${listed(blank)}.`
  return `${mean}, on ${counted(n, { one: 'card', many: 'cards' })} only; it takes three to say so.`
}
