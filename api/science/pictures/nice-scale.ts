/** An axis in round steps. */
export type Scale = {
  readonly from: number
  readonly to: number
  readonly step: number
  /** From `from` to `to`, both included. */
  readonly ticks: readonly number[]
  /** As many decimals as the step needs. */
  readonly decimals: number
}

const roundSteps = [1, 2, 2.5, 4, 5]

/**
 * An axis that covers the values in steps that are read at a glance: 1, 2, 2.5, 4 or 5 times a power of ten, in five to
 * seven steps if one of these does it, as little empty room as can be.
 *
 * @param low The least value shown. Give 0 for a loss: its axis starts there.
 * @param high The largest value shown. Equal to `low`, a step either side is added.
 * @throws RangeError when an end is not finite, or `high` is below `low`.
 *
 * @example
 * niceScale(0, 11.47) // { from: 0, to: 12, step: 2, decimals: 0 }
 * @example
 * niceScale(0, 25.3).step // 5
 */
export function niceScale(
  low: number,
  high: number,
  { fewest = 5, most = 7 }: { fewest?: number; most?: number } = {},
): Scale {
  if (!Number.isFinite(low) || !Number.isFinite(high) || high < low)
    throw new RangeError('An axis runs from a number to a larger one')
  if (low === high) {
    const around = Math.abs(low) * 0.1 || 1
    return niceScale(low - around, high + around, { fewest, most })
  }

  const power = Math.floor(Math.log10((high - low) / most))
  const candidates = [power, power + 1].flatMap((tens) =>
    roundSteps.map((round) => ({ step: round * 10 ** tens, tens, round })),
  )
  let best: Scale | undefined
  let least = Number.POSITIVE_INFINITY
  for (const { step, tens, round } of candidates) {
    const first = Math.floor(low / step + 1e-9)
    const last = Math.ceil(high / step - 1e-9)
    const steps = last - first
    const outside = Math.max(0, fewest - steps) + Math.max(0, steps - most)
    const waste = (steps * step - (high - low)) / (high - low)
    const awkward = round === 4 || round === 2.5 ? 0.08 : 0
    const cost = 10 * outside + waste + awkward
    if (cost >= least) continue
    least = cost
    const decimals = Math.max(0, -tens + (round === 2.5 ? 1 : 0))
    best = scaleOf(first, last, step, decimals)
  }
  if (best === undefined) throw new RangeError('An axis runs from a number to a larger one')
  return best
}

function scaleOf(first: number, last: number, step: number, decimals: number): Scale {
  // Multiplied and rounded, never added up, so that 0.1 × 3 is 0.3.
  const ticks = Array.from({ length: last - first + 1 }, (_, place) =>
    Number(((first + place) * step).toFixed(decimals)),
  )
  return { from: ticks[0] ?? 0, to: ticks.at(-1) ?? 0, step: Number(step.toFixed(decimals)), ticks, decimals }
}
