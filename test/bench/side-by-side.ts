/** One way of doing a job, on a given number of things. */
export type Contender = { readonly name: string; readonly things: number; readonly work: () => unknown }

export type Rate = { readonly name: string; readonly perSecond: number }

/** Keeps results alive, so that no work is thought away. */
let kept: unknown

/**
 * Runs the contenders in turn, again and again, on one thread in one process, and gives the median rate of each.
 * Turns keep a busy moment of the machine from falling on one of them alone.
 */
export function sideBySide(contenders: readonly Contender[], { rounds = 9, warmUp = 3 } = {}): Rate[] {
  const rates = contenders.map(() => [] as number[])
  for (let round = -warmUp; round < rounds; round++) {
    for (const [place, { things, work }] of contenders.entries()) {
      const start = performance.now()
      kept = work()
      const seconds = (performance.now() - start) / 1000
      if (round >= 0) rates[place]!.push(things / seconds)
    }
  }
  return contenders.map(({ name }, place) => ({ name, perSecond: median(rates[place]!) }))
}

/** Prints rates in millions a second, and how many times as fast the first is as the fastest of the others. */
export function printRates(unit: string, rates: readonly Rate[], target?: number): void {
  const [ours, ...others] = rates
  for (const { name, perSecond } of rates)
    console.log(`  ${name.padEnd(44)} ${(perSecond / 1e6).toFixed(3).padStart(9)} M ${unit}/s`)
  if (ours === undefined || others.length === 0) return
  const fastest = others.reduce((best, one) => (one.perSecond > best.perSecond ? one : best))
  const times = (ours.perSecond / fastest.perSecond).toFixed(2)
  console.log(`  → ${times} × ${fastest.name}${target === undefined ? '' : ` (aim: ${target} ×)`}`)
}

/** Prints how long one piece of work takes, and how many times as long the others take. */
export function printTimes(rates: readonly Rate[]): void {
  const [ours] = rates
  for (const { name, perSecond } of rates) {
    const ms = `${(1000 / perSecond).toFixed(2)} ms`.padStart(12)
    console.log(`  ${name.padEnd(44)} ${ms}  ${((ours?.perSecond ?? perSecond) / perSecond).toFixed(2)} ×`)
  }
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}

/** What the last piece of work gave. */
export function lastResult(): unknown {
  return kept
}
