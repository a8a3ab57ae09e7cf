/** Chance that can be repeated: the same seed gives the same draws, on every machine. */
export type SeededRandom = {
  /** A whole number from 0 to 2³² − 1. */
  readonly whole: () => number
  /** From 0 up to but not including 1, with 53 bits. */
  readonly uniform: () => number
  /** A whole number from 0 up to but not including `n`, each alike likely; `n` from 1 to 2³². */
  readonly below: (n: number) => number
  /** Normal with mean 0 and SD 1. */
  readonly normal: () => number
}

/**
 * Draws by lot from a seed that is kept, so that a plan can be drawn again and checked.
 *
 * The generator is xoshiro128**, its four words filled from the seed by the finishing steps of MurmurHash3; text is
 * first made a number by FNV-1a. Normals by Marsaglia's polar method.
 *
 * @param seed  A whole number, or any text.
 * @see Blackman & Vigna (2021), ACM Trans. Math. Softw. 47, 36. Marsaglia & Bray (1964), SIAM Rev. 6, 260–264.
 *
 * @example
 * seededRandom('blue').uniform() === seededRandom('blue').uniform() // true
 */
export function seededRandom(seed: number | string): SeededRandom {
  const whole = xoshiro128(wordsOf(seed))
  const uniform = (): number => ((whole() >>> 5) * 67_108_864 + (whole() >>> 6)) / 9_007_199_254_740_992
  let spare: number | undefined
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare
      spare = undefined
      return kept
    }
    for (;;) {
      const x = 2 * uniform() - 1
      const y = 2 * uniform() - 1
      const square = x * x + y * y
      if (square >= 1 || square === 0) continue
      const stretch = Math.sqrt((-2 * Math.log(square)) / square)
      spare = y * stretch
      return x * stretch
    }
  }
  const below = (n: number): number => {
    if (!(n >= 1 && n <= 4_294_967_296)) throw new RangeError('A lot is drawn among 1 to 2³² things.')
    // What is left over at the top would make the first numbers a little likelier; it is drawn again.
    const fair = 4_294_967_296 - (4_294_967_296 % n)
    for (;;) {
      const drawn = whole()
      if (drawn < fair) return drawn % n
    }
  }
  return { whole, uniform, below, normal }
}

/**
 * The bare generator, from four words that are not all 0.
 *
 * @see Blackman & Vigna (2021), ACM Trans. Math. Softw. 47, 36.
 *
 * @example
 * xoshiro128([1, 2, 3, 4])() // 11520
 */
export function xoshiro128(words: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = words
  return () => {
    const fives = Math.imul(b, 5)
    const drawn = Math.imul((fives << 7) | (fives >>> 25), 9) >>> 0
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = (d << 11) | (d >>> 21)
    return drawn
  }
}

function wordsOf(seed: number | string): [number, number, number, number] {
  const text = String(seed)
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  const word = (place: number): number => {
    let it = (hash + Math.imul(place, 0x9e3779b9)) | 0
    it = Math.imul(it ^ (it >>> 16), 0x85ebca6b)
    it = Math.imul(it ^ (it >>> 13), 0xc2b2ae35)
    return it ^ (it >>> 16)
  }
  // Finishing steps are one to one, so that of four words at most one is 0.
  return [word(1), word(2), word(3), word(4)]
}
