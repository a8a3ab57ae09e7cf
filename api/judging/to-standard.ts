import { predictionLimits } from '#api/science/statistics/prediction-limit.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import { counted, figure, percent } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer, LimitFound } from './answer.ts'
import type { Asked, Engine } from './asked.ts'
import { type BatchRead, batchesOfWays, keptStandard } from './batches-of-way.ts'
import {
  type BatchFound,
  batchesBeside,
  fewestBatches,
  type ToStandard,
  toStandard,
} from './batches-to-standard.ts'
import { levelName } from './level-name.ts'
import { noiseDoubt } from './noise-doubt.ts'
import { figureBeside, reasonOfBatches } from './to-standard-in-words.ts'

const units = { one: 'batch', many: 'batches' }

/** What a batch’s mean and a single skein may be off, where a rule names nothing, in ΔE00: of one colourway. */
const usual = { mean: 2, every: 3 } as const

/** Beyond this many batches nobody goes on. */
const mostBatches = 50

/** Do the batches of each way come out like the kept standard: by the mean of a batch, or skein by skein? */
export const judgeToStandard: Engine = (asked) => {
  const ways = batchesOfWays(asked)
  const standard = keptStandard(asked)
  return asked.levels
    .filter((level) => ways.has(level.id) || level.id !== asked.reference?.id)
    .map((level) => ofWay(asked, level, ways.get(level.id) ?? [], standard))
}

function ofWay(
  asked: Asked,
  level: LevelRow,
  made: readonly BatchRead[],
  standard: ReturnType<typeof keptStandard>,
): Answer {
  const { condition, confidence, noise } = asked
  const each = condition.each ?? 'mean'
  const tolerance = condition.atMost ?? condition.margin ?? usual[each]
  const batches = batchesBeside(made, standard)
  const common = {
    condition,
    levelId: level.id,
    units,
    table: null,
    cautions: cautionsOf(made, standard !== undefined),
  }
  const name = levelName(level, asked.factor)
  if (batches.length === 0)
    return {
      ...common,
      answer: 'not-settled',
      reason: standard
        ? `No batch of ${name} was measured yet.`
        : 'The kept standard was not measured: measure its skeins first.',
      n: 0,
      estimate: null,
      limit: null,
      method: [],
      figures: {},
      more: null,
    }
  const doubt = noiseDoubt(noise, tolerance)
  const missing = made
    .flatMap(({ skeins }) => skeins)
    .filter(({ lab, entered, lost }) => !lost && entered === undefined && !(lab && standard)).length
  const found = toStandard(batches, {
    each,
    tolerance,
    confidence,
    error: noise?.upperRms ?? 0,
    missing,
    noiseStops: doubt !== undefined,
  })
  const means = batches.map(({ mean }) => mean)
  const next = predictionLimits(means, { confidence })
  return {
    ...common,
    answer: found.answer,
    reason:
      found.because === 'noise' && doubt
        ? doubt
        : reasonOfBatches(found, { name, each, tolerance, missing, n: batches.length }),
    n: batches.length,
    estimate:
      each === 'mean' && !('unavailable' in next)
        ? {
            value: next.mean,
            lower: Math.max(0, next.lower),
            upper: next.upper,
            confidence: 2 * confidence - 1,
            unit: 'ΔE00',
          }
        : null,
    limit: limitFound(batches, { each, tolerance, missing, answer: found.answer, worst: found.worst }),
    method: [
      each === 'mean'
        ? `Each batch by the mean of L*, a* and b* over its skeins, to the mean of the standard’s skeins (CIEDE2000); one-sided ${percent(confidence)} prediction limit of the next batch, Student’s t on the batches.`
        : 'Each skein by its mean colour, to the mean of the standard’s skeins (CIEDE2000); the worst counts.',
      ...(noise
        ? [
            `A batch counts as off when it is so with the noise taken off (root mean square, upper 80\u00a0% limit ${figure(noise.upperRms)}).`,
          ]
        : []),
    ],
    figures: {
      tolerance,
      worstBatch: Math.max(...means),
      worstSkein: Math.max(...batches.map(({ worst }) => worst.value)),
      nextBatchUpTo: found.nextUpTo ?? null,
      mcdm: mostUneven(batches),
    },
    more: moreBatches(found, means, { tolerance, confidence }),
  }
}

function limitFound(
  batches: readonly BatchFound[],
  {
    each,
    tolerance,
    missing,
    answer,
    worst,
  }: { each: 'mean' | 'every'; tolerance: number; missing: number } & Pick<ToStandard, 'answer' | 'worst'>,
): LimitFound {
  const offOf = (batch: BatchFound) => (each === 'mean' ? batch.mean : batch.worst.value)
  return {
    worst: offOf(worst),
    worstText: figureBeside(offOf(worst), tolerance),
    worstAt: each === 'mean' ? worst.name : `${worst.name}, skein ${worst.worst.skein}`,
    all: batches.map((batch) => `${batch.name} ${figureBeside(offOf(batch), tolerance)}`),
    met: offOf(worst) <= tolerance,
    broken: answer === 'does-not-hold',
    missing,
  }
}

function cautionsOf(made: readonly BatchRead[], hasStandard: boolean): string[] {
  const skeins = made.flatMap((batch) => batch.skeins)
  const lost = skeins.flatMap(({ lost, lab, entered }) =>
    lost && !lab && entered === undefined ? [lost] : [],
  )
  const typed = skeins.some(({ lab, entered }) => entered !== undefined && !(lab && hasStandard))
  return [
    ...(lost.length > 0
      ? [
          `${counted(lost.length, { one: 'skein', many: 'skeins' })} lost before being measured (${[...new Set(lost)].join('; ')}).`,
        ]
      : []),
    ...(typed
      ? [
          'Some differences were entered without their colours; of those the mean of the differences stands for the batch.',
        ]
      : []),
  ]
}

function mostUneven(batches: readonly BatchFound[]): number | null {
  const known = batches.flatMap((batch) => (batch.mcdm === undefined ? [] : [batch.mcdm]))
  return known.length === 0 ? null : Math.max(...known)
}

/** How many more batches like these would settle it; null where they would not. */
function moreBatches(
  { because }: ToStandard,
  means: readonly number[],
  { tolerance, confidence }: { tolerance: number; confidence: number },
): number | null {
  const n = means.length
  if (because === 'few') return fewestBatches - n
  const seen = predictionLimits(means, { confidence })
  if (because !== 'next' || 'unavailable' in seen) return null
  for (let all = n + 1; all <= mostBatches; all++)
    if (seen.mean + studentTQuantile(confidence, all - 1) * seen.sd * Math.sqrt(1 + 1 / all) < tolerance)
      return all - n
  return null
}
