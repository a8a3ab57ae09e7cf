import { failingShareUpTo } from '#api/science/statistics/failing-share.ts'
import { counted, listed, margin as marginFigure, percent } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'
import { blankRows, type ComparedRow, comparedRows } from './compared-row.ts'
import { judgedRows } from './judged-rows.ts'
import { levelName } from './level-name.ts'
import { testInWords, valueInWords } from './limit-in-words.ts'
import { type Pair, pairsOf } from './pairs-of-blocks.ts'
import { fewestPairs, type PairsBecause, pairsVerdict } from './pairs-verdict.ts'
import { unitWords, vesselWords } from './unit-words.ts'

/** What one pair is asked: how much worse the level is, or how far the two are apart. */
export type PairAsked = { readonly amount: (pair: Pair) => number; readonly over: 'worse' | 'apart' }

export const worseBy: PairAsked = { amount: (pair) => pair.worse, over: 'worse' }
export const apartBy: PairAsked = { amount: (pair) => Math.abs(pair.worse), over: 'apart' }

/** Every level but the reference, by grades, steps or yes and no: pair by pair within blocks. */
export function judgedByPairs(asked: Asked, reference: LevelRow, { amount, over }: PairAsked): Answer[] {
  const { condition, levels, factor } = asked
  const rows = judgedRows(asked)
  const compared = comparedRows(rows)
  const blanks = blankRows(rows)
  const sign = condition.direction === 'smaller is better' ? 1 : -1
  const allowed = condition.margin ?? 0
  // Pairs are pairs within blocks, whatever method measured outcomes are compared by.
  const units = unitWords({ trial: asked.trial, method: 'paired' }, rows)
  const figures = referenceGrades(compared, reference.id, sign)
  return levels
    .filter((level) => level.id !== reference.id)
    .map((level): Answer => {
      const both = [level, reference]
      const counts = both.map(({ id }) => unitsAt(compared, id))
      const pairs = pairsOf(compared, { level: level.id, reference: reference.id, sign, amount })
      const n = pairs.length
      const blank = blanks.filter((row) => both.some(({ id }) => id === row.levelId)).length
      const found = pairsVerdict(pairs.map(amount), {
        margin: allowed,
        fewestUnits: Math.min(...counts),
        blank,
      })
      const mayFail = found.over === 0 && n > 0 ? failingShareUpTo(0, n, asked.confidence) : null
      const names = both.map((it) => levelName(it, factor))
      const single = names.filter((_, place) => counts[place] === 1)
      const worst = pairs.reduce<Pair | undefined>((a, b) => (a && amount(a) >= amount(b) ? a : b), undefined)
      const said = {
        asked,
        names,
        single,
        vessels: vesselWords(asked.trial, rows),
        units,
        n,
        blank,
        over,
        allowed,
        worst,
        mayFail,
      }
      return {
        condition,
        levelId: level.id,
        answer: found.answer,
        reason: pairsInWords(found.because, { ...said, found: found.over }),
        n,
        units,
        estimate: null,
        table: null,
        limit: null,
        cautions: [],
        method: [
          'Levels are compared pair by pair within blocks; the exact one-sided limit of the share that may fail is 1 − α^(1/n).',
        ],
        figures: { ...figures, pairs: n, pairsOver: found.over, failingUpTo: mayFail },
        more: found.because === 'few pairs' ? fewestPairs - n : null,
      }
    })
}

type Said = {
  readonly asked: Asked
  readonly names: readonly string[]
  readonly single: readonly string[]
  readonly vessels: { readonly one: string }
  readonly units: { readonly one: string; readonly many: string }
  readonly n: number
  readonly blank: number
  readonly found: number
  readonly over: PairAsked['over']
  readonly allowed: number
  readonly worst: Pair | undefined
  readonly mayFail: number | null
}

function pairsInWords(because: PairsBecause, it: Said): string {
  const { asked, units, n, blank, allowed, worst, mayFail } = it
  const [level = '', reference = ''] = it.names
  const { outcome } = asked.condition
  const test = testInWords({ ...asked.condition, wear: {} })
  const by = allowed > 0 ? ` by more than ${marginFigure(allowed)}` : ''
  const did =
    it.over === 'worse'
      ? `${test} at ${level} was worse than at ${reference}${by}`
      : `${test} at ${level} and ${reference} differed${by}`
  const share = percent(Math.round((mayFail ?? 0) * 100) / 100)
  switch (because) {
    case 'none over':
      return `In none of ${counted(n, units)} ${did}; up to ${share} may still be.`
    case 'few pairs':
      return `In none of ${counted(n, units)} ${did}, but it takes ${fewestPairs}.`
    case 'a pair over':
      return `In ${it.found} of ${counted(n, units)} ${did}: ${worst ? `${valueInWords(outcome, worst.level)} against ${valueInWords(outcome, worst.reference)}` : ''}.`
    case 'no pair':
      return `No ${units.one} has results of both ${level} and ${reference}.`
    case 'one unit':
      return `${listed(it.single)} had one ${it.vessels.one} in the whole trial, so nothing can be claimed.`
    case 'blank':
      return `${counted(blank, { one: 'skein', many: 'skeins' })} of ${level} or ${reference} ${blank === 1 ? 'has' : 'have'} no result: enter it, or why the skein was lost.`
  }
}

/** The median and the worst of the reference itself. */
function referenceGrades(
  rows: readonly ComparedRow[],
  reference: string,
  sign: 1 | -1,
): Readonly<Record<'referenceMedian' | 'referenceWorst', number | null>> {
  const bestFirst = rows
    .filter((it) => it.level === reference)
    .map((it) => it.value)
    .sort((a, b) => sign * (a - b))
  return {
    referenceMedian: bestFirst[Math.floor(bestFirst.length / 2)] ?? null,
    referenceWorst: bestFirst.at(-1) ?? null,
  }
}

function unitsAt(rows: readonly ComparedRow[], level: string): number {
  return new Set(rows.filter((row) => row.level === level).map((row) => row.unit)).size
}
