const degree = 15
const perUnit = 2

/**
 * Remembers a smooth tail probability: its logarithm by Chebyshev polynomials of degree 15 on intervals of
 * length ½, each worked out when it is first asked for (Abramowitz & Stegun 1964, 25.4.38–39 for the nodes). One
 * table serves all pairs of a family, which would otherwise cost thousands of integrals.
 *
 * Below `from` the tail is 1, above `to` it is 0.
 *
 * @example
 * tailTable((w) => Math.exp(-w * w), { from: 0, to: 20 })(1.5) // 0.105399224561864
 */
export function tailTable(
  tail: (w: number) => number,
  { from, to }: { readonly from: number; readonly to: number },
): (w: number) => number {
  const pieces = new Map<number, Float64Array>()
  return (w) => {
    if (w < from) return 1
    if (w >= to) return 0
    const start = Math.floor(w * perUnit) / perUnit
    let piece = pieces.get(start)
    if (piece === undefined) {
      piece = chebyshev((x) => Math.log(tail(start + (x + 1) / (2 * perUnit))))
      pieces.set(start, piece)
    }
    return Math.exp(clenshaw(piece, 2 * perUnit * (w - start) - 1))
  }
}

function chebyshev(f: (x: number) => number): Float64Array {
  const n = degree + 1
  const values = Array.from({ length: n }, (_, i) => f(Math.cos((Math.PI * (i + 0.5)) / n)))
  return Float64Array.from({ length: n }, (_, j) => {
    let sum = 0
    for (const [i, value] of values.entries()) sum += value * Math.cos((Math.PI * j * (i + 0.5)) / n)
    return (2 * sum) / n
  })
}

function clenshaw(coefficients: Float64Array, x: number): number {
  let next = 0
  let afterNext = 0
  for (let j = degree; j > 0; j--) {
    const here = 2 * x * next - afterNext + coefficients[j]!
    afterNext = next
    next = here
  }
  return x * next - afterNext + coefficients[0]! / 2
}
