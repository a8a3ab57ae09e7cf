import { outcomeKind } from '#api/contract/outcomes.ts'
import { figure, margin as marginFigure } from '#api/words/numbers.ts'
import type { LevelRow } from '#db/trials.ts'
import { alike } from './alike-verdict.ts'
import type { Answer } from './answer.ts'
import type { Asked } from './asked.ts'
import type { Deciding } from './deciding-interval.ts'
import { type LevelCompared, levelsCompared } from './judged-difference.ts'
import { levelName } from './level-name.ts'
import { saidOfDifference } from './said-of-difference.ts'
import { whyOpen } from './why-open.ts'

/** Every level but the reference: does it come out the same, within the margin? */
export function alikeMeasured(asked: Asked, reference: LevelRow, margin: number): Answer[] {
  return levelsCompared(asked, reference, margin).map((it): Answer => {
    const compared = eitherWay(it.compared)
    const { fewestUnits, blank, stop } = it
    const found = alike({ compared, margin, fewestUnits, blank, noiseStops: stop !== undefined })
    const { interval } = compared
    const few = found.because === 'few blocks'
    return {
      ...it.answer,
      answer: found.answer,
      estimate: it.answer.estimate && interval ? { ...it.answer.estimate, ...interval } : null,
      reason: reasonOf(found.because, { ...it, compared }, asked),
      more: few ? 3 - compared.raw.n : null,
    }
  })
}

/** Either end may decide, so the error’s upper limit counts at both. */
function eitherWay(compared: Deciding): Deciding {
  const { interval, netOfUpper } = compared
  if (!interval || netOfUpper?.lower === undefined) return compared
  return { ...compared, interval: { ...interval, lower: Math.min(interval.lower, netOfUpper.lower) } }
}

function reasonOf(
  because: ReturnType<typeof alike>['because'],
  it: LevelCompared,
  { condition, factor }: Asked,
): string {
  const { interval } = it.compared
  const said = saidOfDifference(condition, factor, it.level, it.reference)
  if (interval && because === 'under the margin') {
    const unit = condition.outcome === 'dE00' ? '' : ` ${outcomeKind(condition.outcome).unit ?? ''}`.trimEnd()
    const within = figure(Math.max(Math.abs(interval.lower), Math.abs(interval.upper)))
    return `${levelName(it.level, factor)} and ${levelName(it.reference, factor)} came out within ${within}${unit} of each other; you allowed ${marginFigure(condition.margin ?? 0)}.`
  }
  if (interval && because === 'over the margin')
    return interval.lower > 0 ? said.atLeast(interval.lower) : said.atMost(interval.upper)
  if (interval && because === 'limit') return said.between(interval.lower, interval.upper)
  return whyOpen(because, it, factor)
}
