import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'
import { blocksMore } from './blocks-more.ts'
import { type LevelCompared, levelsCompared } from './judged-difference.ts'
import { type NoWorseVerdict, noWorse } from './no-worse-verdict.ts'
import { saidOfDifference } from './said-of-difference.ts'
import { whyOpen } from './why-open.ts'

/** Every level but the reference, of an outcome that is measured. */
export function noWorseMeasured(asked: Asked, reference: LevelRow, margin: number): Answer[] {
  return levelsCompared(asked, reference, margin).map((it): Answer => {
    const { compared, fewestUnits, blank, stop, confidence, pooled } = it
    const found = noWorse({ compared, margin, fewestUnits, blank, noiseStops: stop !== undefined })
    const moreHelps = found.because === 'limit' || found.because === 'few blocks'
    return {
      ...it.answer,
      answer: found.answer,
      reason: reasonOf(found, it, asked),
      more: moreHelps ? blocksMore(compared, { margin, confidence, pooled }) : null,
    }
  })
}

function reasonOf({ because }: NoWorseVerdict, it: LevelCompared, { condition, factor }: Asked): string {
  const said = saidOfDifference(condition, factor, it.level, it.reference)
  const { interval } = it.compared
  if (interval && because === 'under the margin') return said.atMost(interval.upper)
  if (interval && because === 'over the margin') return said.atLeast(interval.lower)
  if (interval && because === 'limit') return said.between(interval.lower, interval.upper)
  return whyOpen(because, it, factor)
}
