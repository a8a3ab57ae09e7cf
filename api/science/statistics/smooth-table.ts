const degree = 15
const perUnit = 2
/** What the last two coefficients may still say. */
const settled = 1e-12
const mostHalvings = 8

type Piece = Float64Array | { readonly middle: number; left?: Piece; right?: Piece }

/**
 * Remembers a smooth function that is above 0: its logarithm by Chebyshev polynomials of degree 15 on intervals of
 * length ½, each worked out when it is first asked for and halved where it is too steep (Abramowitz & Stegun 1964,
 * 25.4.38–39 for the nodes). One table serves all pairs of a family, which would otherwise cost thousands of
 * integrals.
 *
 * @example
 * smoothTable((x) => 1 / (1 + x * x))(1.5) // 0.307692307692308
 */
export function smoothTable(f: (x: number) => number): (x: number) => number {
  const pieces = new Map<number, Piece>()

  const made = (from: number, width: number, halvings: number): Piece => {
    const piece = chebyshev((t) => Math.log(f(from + ((t + 1) / 2) * width)))
    const rest = Math.abs(piece[degree]!) + Math.abs(piece[degree - 1]!)
    const steep = rest > settled * Math.max(1, Math.abs(piece[0]!))
    return steep && halvings < mostHalvings ? { middle: from + width / 2 } : piece
  }

  return (x) => {
    const place = Math.floor(x * perUnit)
    let from = place / perUnit
    let width = 1 / perUnit
    let piece = pieces.get(place)
    if (piece === undefined) {
      piece = made(from, width, 0)
      pieces.set(place, piece)
    }
    for (let halvings = 1; !(piece instanceof Float64Array); halvings++) {
      width /= 2
      const side: 'left' | 'right' = x < piece.middle ? 'left' : 'right'
      if (side === 'right') from = piece.middle
      piece[side] ??= made(from, width, halvings)
      piece = piece[side]
    }
    return Math.exp(clenshaw(piece, (2 * (x - from)) / width - 1))
  }
}

/**
 * Remembers a tail probability in the same way: below `from` it is 1, from `to` on it is 0.
 *
 * @example
 * tailTable((w) => Math.exp(-w * w), { from: 0, to: 20 })(1.5) // 0.105399224561864
 */
export function tailTable(
  tail: (w: number) => number,
  { from, to }: { readonly from: number; readonly to: number },
): (w: number) => number {
  const table = smoothTable(tail)
  return (w) => (w < from ? 1 : w >= to ? 0 : table(w))
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
