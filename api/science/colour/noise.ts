import { ciede2000 } from './ciede2000.ts'
import type { Lab } from './lab.ts'
import { meanLab } from './mean-colour.ts'

/** What measuring itself does to a colour. `means` says how `floor` and `rms` were had. */
export type Noise = {
  /** Standard deviation of one reading within a thing, by axis, pooled over the things. */
  readonly sd: { readonly L: number; readonly a: number; readonly b: number }
  readonly df: number
  /** Mean ΔE00 between two means of one unchanged thing: what no change at all looks like. */
  readonly floor: number
  /** Root mean square of the same: what is to be taken off a change, see `netOfNoise`. */
  readonly rms: number
  /** Smallest difference between two such means that can be told from noise. */
  readonly sdd: number
  readonly means: 'disjoint groups' | 'pairs scaled'
}

/** Beyond this many ways of choosing two groups of more than one reading, pairs are scaled instead. */
const mostSplits = 20_000

/**
 * The noise of measuring, from things that were left unchanged and read again, each time newly placed.
 *
 * With `readingsPerMean` k, `floor` and `rms` are of ΔE00 between two means of k readings of one thing. When every
 * thing has 2k readings they are taken directly, over all ways to choose two groups of k without a shared reading.
 * Otherwise they are taken between single readings and divided by √k, which is exact for a root mean square of
 * plain distances and close for ΔE00. `sdd` is 2.8 times the largest of the three SDs, divided by √k.
 *
 * @throws RangeError without things, for a thing read once, or a k that is not a whole number from 1
 *
 * @example
 * noise([[{ L: 50, a: 0, b: 0 }, { L: 51, a: 0, b: 0 }]]) // { sd: { L: 0.70711, a: 0, b: 0 }, df: 1, sdd: 1.9799 }
 */
export function noise(
  things: readonly (readonly Lab[])[],
  { readingsPerMean = 1 }: { readingsPerMean?: number } = {},
): Noise {
  if (things.length === 0 || things.some((readings) => readings.length < 2))
    throw new RangeError('Noise needs at least one thing, each read at least twice.')
  if (!Number.isInteger(readingsPerMean) || readingsPerMean < 1)
    throw new RangeError('A mean is of a whole number of readings, 1 or more.')
  const k = readingsPerMean
  const df = things.reduce((sum, readings) => sum + readings.length - 1, 0)
  const sd = pooledSd(things, df)
  const direct = k === 1 || canBeSplit(things, k)
  const differences = things.flatMap((readings) =>
    direct && k > 1 ? betweenGroups(readings, k) : betweenReadings(readings),
  )
  const shrunk = direct ? 1 : Math.sqrt(k)
  const count = differences.length
  return {
    sd,
    df,
    floor: differences.reduce((sum, difference) => sum + difference, 0) / count / shrunk,
    rms: Math.sqrt(differences.reduce((sum, difference) => sum + difference ** 2, 0) / count) / shrunk,
    sdd: smallestDetectable(sd, k),
    means: direct ? 'disjoint groups' : 'pairs scaled',
  }
}

/**
 * The smallest difference between two means of k readings that can be told from noise: 2.8 × the largest SD ÷ √k.
 *
 * @example
 * smallestDetectable({ L: 0.3, a: 0.2, b: 0.1 }, 4) // 0.42
 */
export function smallestDetectable(sd: Noise['sd'], readingsPerMean: number): number {
  return (2.8 * Math.max(sd.L, sd.a, sd.b)) / Math.sqrt(readingsPerMean)
}

/**
 * How many readings a mean needs for the smallest detectable difference to be half the margin or less.
 *
 * @throws RangeError for a margin that is not above 0
 *
 * @example
 * readingsNeeded({ L: 0.3, a: 0.2, b: 0.1 }, 1) // 3
 */
export function readingsNeeded(sd: Noise['sd'], margin: number): number {
  if (!(margin > 0)) throw new RangeError('A margin is above 0.')
  const times = smallestDetectable(sd, 1) / (margin / 2)
  // 0.3 and 0.3 ÷ 2.8 must not need a reading more because of the last binary digit.
  return Math.max(1, Math.ceil(times * times * (1 - 1e-12)))
}

function pooledSd(things: readonly (readonly Lab[])[], df: number): Noise['sd'] {
  const squares = { L: 0, a: 0, b: 0 }
  for (const readings of things) {
    const mean = meanLab(readings)
    for (const reading of readings)
      for (const axis of ['L', 'a', 'b'] as const) squares[axis] += (reading[axis] - mean[axis]) ** 2
  }
  return {
    L: Math.sqrt(squares.L / df),
    a: Math.sqrt(squares.a / df),
    b: Math.sqrt(squares.b / df),
  }
}

/** Whether every thing has readings for two means, and there are not too many ways to choose them. */
function canBeSplit(things: readonly (readonly Lab[])[], k: number): boolean {
  if (things.some(({ length }) => length < 2 * k)) return false
  return things.reduce((sum, { length }) => sum + splits(length, k), 0) <= mostSplits
}

/** In how many ways two groups of k can be chosen from n. */
function splits(n: number, k: number): number {
  return (ways(n, k) * ways(n - k, k)) / 2
}

function ways(n: number, k: number): number {
  let product = 1
  for (let i = 1; i <= k; i++) product = (product * (n - k + i)) / i
  return product
}

/** ΔE00 between every two readings. */
function betweenReadings(readings: readonly Lab[]): number[] {
  const differences: number[] = []
  for (const [place, one] of readings.entries())
    for (let other = place + 1; other < readings.length; other++)
      differences.push(ciede2000(one, readings[other]!))
  return differences
}

/** ΔE00 between the means of every two groups of k readings that share none. */
function betweenGroups(readings: readonly Lab[], k: number): number[] {
  const places = readings.map((_, place) => place)
  const differences: number[] = []
  for (const one of groupsOf(places, k)) {
    // A pair of groups is met once: the second starts after the first.
    const rest = places.filter((place) => place > one[0]! && !one.includes(place))
    const mean = meanLab(one.map((place) => readings[place]!))
    for (const other of groupsOf(rest, k))
      differences.push(ciede2000(mean, meanLab(other.map((place) => readings[place]!))))
  }
  return differences
}

function groupsOf(places: readonly number[], k: number): number[][] {
  if (k === 0) return [[]]
  return places.flatMap((first, at) =>
    groupsOf(places.slice(at + 1), k - 1).map((others) => [first, ...others]),
  )
}
