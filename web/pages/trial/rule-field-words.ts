import { outcomeKind } from '#api/contract/outcomes.ts'
import { countsLots, isOrdinal, questionOf } from '#api/contract/question.ts'
import type { Rule } from '#api/contract/trial.ts'
import { wearInWords, wearKey } from '#api/contract/wear-words.ts'

type Condition = Rule['conditions'][number]

/** Which number of a condition is asked for. */
export type RuleSide = 'margin' | 'leastGain' | 'atLeast' | 'atMost'

/**
 * The one number that a condition needs, by its question.
 *
 * @example
 * sideOf({ outcome: 'felting', wear: {}, end: 'high', against: 'none', question: 'within-limit', direction: 'smaller is better' }) // 'atMost'
 */
export function sideOf(condition: Condition): RuleSide {
  const { margin, atLeast, atMost, against, direction } = condition
  const question = questionOf(condition)
  if (question === 'better') return 'leastGain'
  if (question === 'light') return 'atLeast'
  if (question === 'to-standard' || question === 'sees')
    return atMost === undefined && (question === 'sees' || margin !== undefined) ? 'margin' : 'atMost'
  if (question !== 'within-limit' || against === 'next level') return 'margin'
  if (atLeast !== undefined) return 'atLeast'
  if (atMost !== undefined) return 'atMost'
  return direction === 'larger is better' ? 'atLeast' : 'atMost'
}

export type FieldWords = { readonly label: string; readonly help: string | undefined; readonly unit: string }

/** The label, the help and the unit of the number of a condition. */
export function wordsOfField(
  condition: Condition,
  { side, main }: { readonly side: RuleSide; readonly main: string },
): FieldWords {
  const { outcome, fibre, against, end, wear } = condition
  const kind = outcomeKind(outcome)
  const question = questionOf(condition)
  const lots = countsLots(condition)
  const elsewhere = wearKey(wear) !== '' && wearKey(wear) !== main ? [`after ${wearInWords(wear)}`] : []
  const unit = kind.unit ?? (outcome === 'lightness' ? 'L*' : '')
  const name = `${kind.label}${fibre === undefined || !lots ? '' : ` of ${fibre}`}`
  const said = (label: string, ...help: readonly string[]): FieldWords => ({
    label: outcome === 'dE00' ? label : `${label}, ${name}`,
    help: [...elsewhere, ...help].join('; ') || undefined,
    unit,
  })
  if (against === 'next level')
    return said('Margin', 'between the means of neighbours: described, not tested')
  if (question === 'no-worse')
    return said(
      'Margin',
      outcome === 'dE00' ? 'how much extra change you would accept' : 'how much worse you would accept',
    )
  if (question === 'alike') return said('Margin', 'how far apart they may be')
  if (question === 'open-against-covered')
    return said('Margin', 'how much more the open half may change than the covered one')
  if (question === 'sees') return said('Margin', 'the smallest difference that you must see')
  if (question === 'better')
    return said(
      'Least gain worth having',
      isOrdinal(outcome)
        ? 'blank: half a grade'
        : outcome === 'staining dE76'
          ? 'blank: 2.0'
          : 'blank: any gain',
    )
  if (question === 'light')
    return {
      label: 'Blue wool',
      help: 'blank: placed between the wools, and nothing claimed',
      unit: 'or better',
    }
  if (question === 'to-standard') {
    const every = condition.statistic === 'every unit'
    return {
      label: every ? 'Worst skein to the standard' : 'Mean of a batch to the standard',
      help: every ? 'blank: no limit' : undefined,
      unit: `${unit} or less`,
    }
  }
  const less = kind.scale === 'count' ? 'or fewer' : unit === '' ? 'or less' : `${unit} or less`
  return {
    label: outcome === 'staining' && !lots ? 'Worst staining' : name,
    help: (lots
      ? elsewhere.length > 0
        ? elsewhere
        : ['in the worst lot']
      : [...elsewhere, end === 'high' ? 'sets the upper end; blank: no limit' : 'blank: no limit']
    ).join('; '),
    unit: side === 'atLeast' ? (kind.scale === 'grade' ? 'or better' : 'or more') : less,
  }
}
