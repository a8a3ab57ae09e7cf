import { outcomeKind } from '#api/contract/outcomes.ts'
import { blocksNeeded } from '#api/science/verdicts/blocks-needed.ts'
import type { Answer } from './answer.ts'
import { type ArmAsked, unanswered } from './arm-asked.ts'
import { methodOfGain, reasonOfGain } from './better-in-words.ts'
import { betterVerdict } from './better-verdict.ts'
import type { ArmValue } from './block-cells.ts'
import { type GainFound, gainsOverControl } from './gain-over-control.ts'
import { noiseDoubt } from './noise-doubt.ts'

/** Better by a measured amount: the limits of the gain against the least gain worth having. */
export function betterByMeasure(read: readonly ArmValue[], asks: readonly ArmAsked[]): Answer[] {
  const [first] = asks
  if (!first) return []
  const { asked, least, controlId } = first
  const { condition, confidence, method } = asked
  const found = gainsOverControl(read, {
    control: controlId,
    direction: condition.direction,
    confidence,
    blocked: method !== 'pooled',
    least,
    noise: hasLength(condition.outcome) ? asked.noise : undefined,
  })
  return asks.map((ask) => {
    const gain = found.find(({ arm }) => arm === ask.level.id)
    return gain
      ? answerOf(ask, gain)
      : { ...unanswered(ask), reason: `Nothing is recorded of ${ask.name} yet.` }
  })
}

/** Whether noise makes the outcome longer: a ΔE is a length, an L* is not. */
const hasLength = (outcome: string): boolean => outcomeKind(outcome).unit?.startsWith('ΔE') ?? false

function answerOf(ask: ArmAsked, found: GainFound): Answer {
  const { asked, least, missing } = ask
  const { condition, confidence } = asked
  const { raw, net, deciding, n, units } = found
  const stop = noiseStop(ask, found)
  const verdict = betterVerdict({
    deciding,
    least,
    n,
    units: Math.min(units.arm, units.control),
    missing,
    noiseStops: stop !== undefined,
  })
  return {
    ...unanswered(ask),
    answer: verdict.answer,
    reason: reasonOfGain(ask, found, verdict, stop),
    n,
    estimate: deciding
      ? {
          value: deciding.gain,
          lower: deciding.lower,
          upper: deciding.upper,
          confidence: 2 * confidence - 1,
          unit: outcomeKind(condition.outcome).unit ?? '',
        }
      : null,
    table: {
      mean: found.mean ?? null,
      extra: raw?.gain ?? null,
      lower: raw?.lower ?? null,
      upper: raw?.upper ?? null,
      netExtra: net?.gain ?? null,
      netUpper: net?.upper ?? null,
      se: raw?.se ?? null,
      df: raw?.df ?? null,
    },
    method: methodOfGain(ask, found),
    figures: {
      leastGain: least,
      signFlipP: found.signFlipP ?? null,
      ownLower: found.own?.lower ?? null,
      ownUpper: found.own?.upper ?? null,
      netLower: net?.lower ?? null,
    },
    more: verdict.because === 'limit' || verdict.because === 'few blocks' ? moreBlocks(ask, found) : null,
  }
}

/** Why the measuring error stops a “better”: held against the least gain, or where any will do against the gain that was found. */
function noiseStop({ asked, least }: ArmAsked, { deciding }: GainFound): string | undefined {
  const { condition, noise } = asked
  if (!hasLength(condition.outcome) || !deciding) return undefined
  // Of stains it need not be known, and is in no unit of theirs.
  if (!noise && condition.outcome !== 'dE00') return undefined
  return noiseDoubt(noise, least > 0 ? least : Math.max(deciding.gain, Number.MIN_VALUE))
}

/** About how many more blocks would show a gain as large as it was seen; null where it was too small. */
function moreBlocks({ asked, least }: ArmAsked, { raw, n, arms }: GainFound): number | null {
  if (!raw || !(raw.gain > least)) return null
  const pooled = asked.method === 'pooled'
  const seen = { n, extra: 0, sd: raw.se * Math.sqrt(pooled ? n / 2 : n), df: raw.df, noSpread: false }
  const needed = blocksNeeded(seen, {
    margin: raw.gain - least,
    confidence: 1 - (1 - asked.confidence) / arms,
    pooled,
  })
  return 'unavailable' in needed ? null : Math.max(1, needed.blocks - n)
}
