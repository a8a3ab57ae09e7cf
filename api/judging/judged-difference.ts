import { outcomeKind } from '#api/contract/outcomes.ts'
import { sentenceCase } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer, Estimate, RawAndNet } from './answer.ts'
import type { Asked } from './asked.ts'
import { blankRows, type ComparedRow, comparedRows } from './compared-row.ts'
import { comparisonInWords } from './comparison-in-words.ts'
import { type Deciding, decidingIntervals } from './deciding-interval.ts'
import { noiseStops } from './noise-gates.ts'
import { referenceFigures } from './reference-figures.ts'
import { driftInWords, rowsWithoutDrift } from './rows-without-drift.ts'
import { unitWords, vesselWords } from './unit-words.ts'

type Words = { readonly one: string; readonly many: string }

/** Everything that is known of one level against the reference, before it is judged. */
export type LevelCompared = {
  readonly level: LevelRow
  readonly reference: LevelRow
  readonly compared: Deciding
  /** Levels of the two that had a single unit in the whole trial. */
  readonly single: readonly LevelRow[]
  readonly fewestUnits: number
  readonly blank: number
  /** Why the measuring error keeps it from holding. */
  readonly stop: string | undefined
  readonly units: Words
  readonly vessels: Words
  /** One-sided, of this comparison. */
  readonly confidence: number
  readonly pooled: boolean
  /** What the answer has from here, whatever it is. */
  readonly answer: Pick<
    Answer,
    | 'condition'
    | 'levelId'
    | 'n'
    | 'units'
    | 'estimate'
    | 'table'
    | 'limit'
    | 'cautions'
    | 'method'
    | 'figures'
  >
}

/** Every level but the reference against it, of an outcome that is measured. */
export function levelsCompared(asked: Asked, reference: LevelRow, margin: number): LevelCompared[] {
  const { condition, factor, levels } = asked
  const { rows, drift } = rowsWithoutDrift(asked)
  const compared = comparedRows(rows)
  const blanks = blankRows(rows)
  const isLoss = condition.outcome === 'dE00'
  const noise = isLoss ? asked.noise : undefined
  const sign = condition.direction === 'smaller is better' ? 1 : -1
  const found = decidingIntervals(
    compared,
    {
      reference: reference.id,
      method: asked.method,
      ordered: factor.ordered,
      confidence: asked.confidence,
      sign,
    },
    noise,
  )
  const units = unitWords(asked, rows)
  const method = [...comparisonInWords(found, noise), ...(drift ? [driftInWords(drift)] : [])]
  const figures = referenceFigures(compared, reference.id, noise, sign)
  return levels
    .filter((level) => level.id !== reference.id)
    .map((level): LevelCompared => {
      const both = [level, reference]
      const counts = both.map((it) => distinctUnits(compared, it.id))
      const it = found.at(level.id)
      return {
        level,
        reference,
        compared: it,
        single: both.filter((_, place) => counts[place] === 1),
        fewestUnits: Math.min(...counts),
        blank: blanks.filter((row) => both.some(({ id }) => id === row.levelId)).length,
        stop: isLoss ? noiseStops(noise, margin) : undefined,
        units,
        vessels: vesselWords(asked.trial, rows),
        confidence: found.confidenceOfEach,
        pooled: found.method === 'pooled',
        answer: {
          condition,
          levelId: level.id,
          n: it.raw.n,
          units,
          estimate: estimateOf(it, asked),
          table: tableOf(it),
          limit: null,
          cautions: found.joined
            ? [`${sentenceCase(units.many)} whose skeins later shared a vessel count as one.`]
            : [],
          method,
          figures: {
            ...figures,
            netLower: it.net?.lower ?? null,
            netUpperAtErrorLimit: it.netOfUpper?.upper ?? null,
          },
        },
      }
    })
}

function estimateOf({ raw, interval }: Deciding, { confidence, condition }: Asked): Estimate | null {
  if (!interval || raw.extra === undefined) return null
  const unit = outcomeKind(condition.outcome).unit ?? ''
  return { value: raw.extra, ...interval, confidence: 2 * confidence - 1, unit }
}

function tableOf({ raw, net }: Deciding): RawAndNet {
  return {
    mean: raw.mean ?? null,
    extra: raw.extra ?? null,
    lower: raw.lower ?? null,
    upper: raw.upper ?? null,
    netExtra: net?.extra ?? null,
    netUpper: net?.upper ?? null,
    se: raw.se ?? null,
    df: raw.df ?? null,
  }
}

function distinctUnits(rows: readonly ComparedRow[], level: string): number {
  return new Set(rows.filter((row) => row.level === level).map((row) => row.unit)).size
}
