/** So much goes from one place to another. */
export type Flow = { readonly from: number; readonly to: number; readonly amount: number }

/** What is left below this is rounding, not goods. */
const nothing = 1e-12

/**
 * The cheapest way to bring what is at hand to where it is wanted: the balanced transport problem, solved exactly.
 * Each round takes the cheapest path from what is left to what is missing, which may send earlier flows back
 * another way, and fills it; when nothing is left no cheaper plan exists.
 *
 * Source: successive shortest paths with potentials (Edmonds and Karp 1972; Tomizawa 1971).
 *
 * @param cost of one unit from place `from` to place `to`, 0 or more
 * @throws RangeError when supply and demand do not balance or a number is negative or not finite
 *
 * @example
 * transport([0.5, 0.5], [1], () => 3) // [{ from: 0, to: 0, amount: 0.5 }, { from: 1, to: 0, amount: 0.5 }]
 */
export function transport(
  supply: readonly number[],
  demand: readonly number[],
  cost: (from: number, to: number) => number,
): Flow[] {
  checkBalance(supply, demand)
  const [n, m] = [supply.length, demand.length]
  const costs = new Float64Array(n * m)
  for (let i = 0; i < n; i++) for (let j = 0; j < m; j++) costs[i * m + j] = cost(i, j)
  if (!costs.every((value) => value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError('A cost of transport is 0 or more.')

  const flow = new Float64Array(n * m)
  const left = Float64Array.from(supply)
  const missing = Float64Array.from(demand)
  const paths = new Paths(n, m, costs, flow)
  for (let i = 0; i < n; i++) {
    while (left[i]! > nothing) {
      const to = paths.cheapest(i, missing)
      if (to < 0) break
      const amount = Math.min(left[i]!, missing[to]!, paths.room(i, to))
      paths.send(i, to, amount)
      left[i]! -= amount
      missing[to]! -= amount
    }
  }
  const flows: Flow[] = []
  flow.forEach((amount, at) => {
    if (amount > nothing) flows.push({ from: Math.floor(at / m), to: at % m, amount })
  })
  return flows
}

function checkBalance(supply: readonly number[], demand: readonly number[]): void {
  if (![...supply, ...demand].every((amount) => amount >= 0 && amount < Number.POSITIVE_INFINITY))
    throw new RangeError('Amounts to transport are 0 or more.')
  const total = (amounts: readonly number[]) => amounts.reduce((sum, amount) => sum + amount, 0)
  const [there, wanted] = [total(supply), total(demand)]
  if (Math.abs(there - wanted) > 1e-9 * Math.max(there, wanted))
    throw new RangeError('As much is wanted as there is.')
}

/** Cheapest paths over what can still be sent: forward anywhere, back along what flows already. */
class Paths {
  readonly #n: number
  readonly #m: number
  readonly #costs: Float64Array
  readonly #flow: Float64Array
  // Potentials keep every reduced cost at 0 or above, so that Dijkstra's rule may be used.
  readonly #potential: Float64Array
  readonly #distance: Float64Array
  readonly #done: Uint8Array
  readonly #before: Int32Array

  constructor(n: number, m: number, costs: Float64Array, flow: Float64Array) {
    this.#n = n
    this.#m = m
    this.#costs = costs
    this.#flow = flow
    this.#potential = new Float64Array(n + m)
    this.#distance = new Float64Array(n + m)
    this.#done = new Uint8Array(n + m)
    this.#before = new Int32Array(n + m)
  }

  /** The place to which the cheapest path from `start` leads and where something is missing; −1 if none is. */
  cheapest(start: number, missing: Float64Array): number {
    const [n, distance, done] = [this.#n, this.#distance, this.#done]
    distance.fill(Number.POSITIVE_INFINITY)
    done.fill(0)
    distance[start] = 0
    this.#before[start] = -1
    for (;;) {
      const node = this.#nearestOpen()
      if (node < 0) return -1
      done[node] = 1
      if (node >= n && missing[node - n]! > nothing) {
        this.#raisePotentials(distance[node]!)
        return node - n
      }
      if (node < n) this.#lookForward(node)
      else this.#lookBack(node)
    }
  }

  /** How much the path found last can take. */
  room(start: number, to: number): number {
    let least = Number.POSITIVE_INFINITY
    for (let node = to + this.#n; node !== start; node = this.#before[node]!) {
      const before = this.#before[node]!
      if (node < this.#n) least = Math.min(least, this.#flow[node * this.#m + before - this.#n]!)
    }
    return least
  }

  send(start: number, to: number, amount: number): void {
    for (let node = to + this.#n; node !== start; node = this.#before[node]!) {
      const before = this.#before[node]!
      if (node >= this.#n) this.#flow[before * this.#m + node - this.#n]! += amount
      else {
        const at = node * this.#m + before - this.#n
        const rest = this.#flow[at]! - amount
        this.#flow[at] = rest > nothing ? rest : 0
      }
    }
  }

  #nearestOpen(): number {
    let nearest = -1
    let least = Number.POSITIVE_INFINITY
    for (let node = 0; node < this.#n + this.#m; node++) {
      if (!this.#done[node] && this.#distance[node]! < least) {
        least = this.#distance[node]!
        nearest = node
      }
    }
    return nearest
  }

  #lookForward(from: number): void {
    for (let to = 0; to < this.#m; to++) this.#reach(from, to + this.#n, this.#costs[from * this.#m + to]!)
  }

  #lookBack(node: number): void {
    const to = node - this.#n
    for (let from = 0; from < this.#n; from++) {
      const at = from * this.#m + to
      if (this.#flow[at]! > 0) this.#reach(node, from, -this.#costs[at]!)
    }
  }

  #reach(node: number, next: number, cost: number): void {
    if (this.#done[next]) return
    // Rounding may leave a reduced cost a hair below 0.
    const reduced = Math.max(0, cost + this.#potential[node]! - this.#potential[next]!)
    const along = this.#distance[node]! + reduced
    if (along < this.#distance[next]!) {
      this.#distance[next] = along
      this.#before[next] = node
    }
  }

  #raisePotentials(furthest: number): void {
    for (let node = 0; node < this.#n + this.#m; node++)
      this.#potential[node]! += Math.min(furthest, this.#distance[node]!)
  }
}
