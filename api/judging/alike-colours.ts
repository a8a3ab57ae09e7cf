import { wearKey } from '#api/contract/wear.ts'
import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'
import { allEqual, extraLoss, withoutLimits } from '#api/science/verdicts/extra-loss.ts'
import type { ExtraLoss } from '#api/science/verdicts/level-rows.ts'
import { counted, figure, listed, margin as marginFigure } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'
import { type Apart, type ColourRow, coloursApart } from './colours-between-arms.ts'
import { blankRows } from './compared-row.ts'
import { type Deciding, deciding } from './deciding-interval.ts'
import { type JudgedRow, judgedRows } from './judged-rows.ts'
import { levelName } from './level-name.ts'
import { type Because, fewestBlocks, noWorse } from './no-worse-verdict.ts'
import type { Noise } from './noise.ts'
import { noiseStops } from './noise-gates.ts'
import { unitWords } from './unit-words.ts'

/**
 * Do two arms have one colour? ΔE00 between their mean colours in each block, net of the measuring error: alike when the
 * upper limit of its mean lies under the margin, different when the lower lies over it.
 */
export function alikeColours(asked: Asked, reference: LevelRow, margin: number): Answer[] {
  const { condition, levels, factor, noise, trial } = asked
  const worn = Object.keys(condition.wear).length > 0
  const ofColour = { ...condition, outcome: worn ? 'dE00' : 'lightness' }
  const { rows, missing } = withColours(judgedRows({ ...asked, condition: ofColour }), asked)
  const units = unitWords({ trial, method: 'paired' }, missing.all)
  const stop = noiseStops(noise, margin)
  const others = levels.filter((level) => level.id !== reference.id)
  // Every arm against the one has its share of the doubt; two arms alone need no correction.
  const confidence = 1 - (1 - asked.confidence) / Math.max(1, factor.ordered ? 1 : others.length)
  return others.map((level): Answer => {
    const compared = coloursCompared(coloursApart(rows, level.id, reference.id), noise, confidence)
    const both = [level.id, reference.id]
    const blank = missing.rows.filter((row) => both.includes(row.levelId)).length
    const counts = both.map((id) => new Set(rows.filter((it) => it.level === id).map((it) => it.unit)).size)
    const fewestUnits = Math.min(...counts)
    const found = noWorse({ compared, margin, fewestUnits, blank, noiseStops: stop !== undefined })
    const { raw, net, netOfUpper, interval } = compared
    const names = [levelName(level, factor), levelName(reference, factor)]
    return {
      condition,
      levelId: level.id,
      answer: found.answer,
      reason: coloursInWords(found.because, { names, compared, margin, units, blank, stop }),
      n: raw.n,
      units,
      estimate:
        interval && raw.extra !== undefined
          ? { value: raw.extra, ...interval, confidence: 2 * asked.confidence - 1, unit: 'ΔE00' }
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
      cautions: [],
      method: [
        `ΔE00 between the mean colours of the two in each ${units.one}; one-sample t, one-sided${others.length > 1 && !factor.ordered ? ', Bonferroni for several arms' : ''}.`,
      ],
      figures: { netLower: net?.lower ?? null, netUpperAtErrorLimit: netOfUpper?.upper ?? null },
      more: found.because === 'few blocks' ? fewestBlocks - raw.n : null,
    }
  })
}

/**
 * The mean ΔE00 between two arms over their blocks, with its limits as read and net of the measuring error.
 *
 * @param confidence  One-sided.
 *
 * @example
 * const apart = [0.98, 1.12, 0.92, 1.47].map((dE00) => ({ dE00, errorShare: 1 }))
 * coloursCompared(apart, undefined, 0.95).interval // { lower: 0.833, upper: 1.412 }
 */
export function coloursCompared(
  apart: readonly Apart[],
  noise: Pick<Noise, 'rms' | 'upperRms'> | undefined,
  confidence: number,
): Deciding {
  const limits = (rms: number) =>
    limitsOfMean(
      apart.map(({ dE00, errorShare }) => netOfNoise(dE00, rms * errorShare)),
      confidence,
    )
  return deciding(limits(0), noise && limits(noise.rms), noise && limits(noise.upperRms))
}

function limitsOfMean(values: readonly number[], confidence: number): ExtraLoss {
  const n = values.length
  if (n === 0) return withoutLimits({ n }, 'Nothing holds both.')
  const mean = values.reduce((sum, it) => sum + it, 0) / n
  const known = { n, mean, extra: mean }
  if (n === 1) return withoutLimits(known, 'One alone has no spread to judge by.')
  if (allEqual(values, Math.max(...values.map(Math.abs))))
    return withoutLimits(known, 'All differences are equal: were values copied or rounded?', {
      noSpread: true,
    })
  const sd = Math.sqrt(values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (n - 1))
  return extraLoss({ ...known, se: sd / Math.sqrt(n), df: n - 1, sd }, confidence)
}

function withColours(rows: readonly JudgedRow[], { trial, condition }: Asked) {
  const key = wearKey(condition.wear)
  const colours = new Map(
    trial.record.colours.filter((it) => wearKey(it.wear) === key).map((it) => [it.skeinId, it]),
  )
  const read = rows.flatMap((row): ColourRow[] => {
    const it = colours.get(row.skein.id)
    if (!it) return []
    return [{ level: row.levelId, block: row.block, unit: row.unit, lab: { L: it.l, a: it.a, b: it.b } }]
  })
  const valued = rows.map((row) => ({ ...row, value: colours.has(row.skein.id) ? 0 : undefined }))
  return { rows: read, missing: { all: rows, rows: blankRows(valued) } }
}

type SaidOfColours = {
  readonly names: readonly string[]
  readonly compared: Deciding
  readonly margin: number
  readonly units: { readonly one: string; readonly many: string }
  readonly blank: number
  readonly stop: string | undefined
}

function coloursInWords(because: Because, it: SaidOfColours): string {
  const { names, compared, margin, units, blank, stop } = it
  const { raw, interval } = compared
  const both = listed(names)
  const allowed = `; you allowed ${marginFigure(margin)}.`
  if (interval && because === 'under the margin')
    return `${both} came out at most ${figure(interval.upper)} apart${allowed}`
  if (interval && because === 'over the margin')
    return `${both} came out at least ${figure(interval.lower)} apart${allowed}`
  if (interval && because === 'limit')
    return `${both} may have come out up to ${figure(interval.upper)} apart${allowed}`
  if (because === 'no pair') return `No ${units.one} has colours of both ${both}.`
  if (because === 'few blocks')
    return `${counted(raw.n, units)} ${raw.n === 1 ? 'has' : 'have'} colours of both ${both}; it takes ${fewestBlocks}.`
  if (because === 'one unit') return `${both}: one of them was done only once, so nothing can be claimed.`
  if (because === 'blank')
    return `${counted(blank, { one: 'skein', many: 'skeins' })} of ${both} ${blank === 1 ? 'has' : 'have'} no colour yet: read it, or enter why the skein was lost.`
  if (because === 'noise') return stop ?? ''
  return raw.unavailable ?? 'The spread is too little known to set limits by.'
}
