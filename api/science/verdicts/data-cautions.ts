import { counted, listed, sentenceCase } from './figure.ts'
import type { Judged } from './judged.ts'
import type { Caution, LevelCount } from './trial-verdict.ts'
import { shortOf, sideLabel } from './words-of-trial.ts'

/**
 * Skeins without a result, lost ones, and side results that were not written down.
 *
 * @example
 * const counts = [{ level: 20, lost: [{ skein: 'a', reason: 'dropped' }], planned: 4, withoutResult: 0 }]
 * dataCautions({ counts, words: { level: String }, result: { reference: 75, referenceLimits: [], steps: [] } })[0] // { kind: 'lost', title: '1 skein lost', text: 'a (20): dropped.' }
 */
export function dataCautions(it: Judged): Caution[] {
  return [...lossCautions(it), ...withoutResult(it), ...blanks(it)]
}

const skeins = { one: 'skein', many: 'skeins' }

function lossCautions({ counts, words }: Judged): Caution[] {
  const lossy = counts.filter((count) => count.lost.length > 0)
  if (lossy.length === 0) return []
  const lost = lossy.flatMap((count) =>
    count.lost.map(({ skein, reason }) => `${skein} (${shortOf(words, count.level)}): ${reason}`),
  )
  const cautions: Caution[] = [
    {
      kind: 'lost',
      title: `${sentenceCase(counted(lost.length, skeins))} lost`,
      text: `${lost.slice(0, 8).join('; ')}${lost.length > 8 ? `; and ${lost.length - 8} more` : ''}.`,
    },
  ]
  const level = levelThatLoses(counts)
  if (level !== undefined)
    cautions.push({
      kind: 'loss-by-level',
      title: 'The loss goes with the level',
      text: `${sentenceCase(shortOf(words, level.level))} lost ${level.lost.length} of ${level.planned}, others none. What is left may be the better part of it.`,
    })
  return cautions
}

/**
 * A level that alone loses skeins: two or more of them, or half of what it had, while another level lost none.
 *
 * @example
 * const count = (level, lost) => ({ level, units: 3, vessels: 3, skeins: 3, sessions: 3, readings: 0, planned: 4, lost: Array(lost).fill({ skein: 'a', reason: 'dropped' }), withoutResult: 0 })
 * levelThatLoses([count(20, 2), count(75, 0)]).level // 20
 */
export function levelThatLoses(counts: readonly LevelCount[]): LevelCount | undefined {
  const meant = counts.filter((count) => count.planned > 0)
  const lossy = meant.filter((count) => count.lost.length > 0)
  if (lossy.length !== 1 || meant.length < 2) return undefined
  const [level] = lossy
  if (level === undefined) return undefined
  return level.lost.length >= 2 || level.lost.length * 2 >= level.planned ? level : undefined
}

function withoutResult({ counts, words }: Judged): Caution[] {
  const open = counts.filter((count) => count.withoutResult > 0)
  if (open.length === 0) return []
  const total = open.reduce((sum, count) => sum + count.withoutResult, 0)
  return [
    {
      kind: 'no-result',
      title: `${sentenceCase(counted(total, skeins))} without a result`,
      text: `${listed(open.map((count) => `${count.withoutResult} of ${shortOf(words, count.level)}`))}. Not lost, not zero: not read.`,
    },
  ]
}

function blanks({ result, words }: Judged): Caution[] {
  const at = [{ level: result.reference, limits: result.referenceLimits }, ...result.steps]
  const blank = at.flatMap(({ level, limits }) =>
    limits
      .filter((limit) => limit.missing > 0)
      .map((limit) => `${sideLabel(words, limit.side)} of ${shortOf(words, level)} (${limit.missing})`),
  )
  if (blank.length === 0) return []
  return [
    {
      kind: 'side-blank',
      title: 'Not recorded',
      text: `${sentenceCase(listed(blank))}. A blank is not a met limit, so these levels are not settled.`,
    },
  ]
}
