/**
 * The largest value of a function on a grid, and then between the two neighbours of the best place, by golden section
 * (Kiefer 1953, Proc. Am. Math. Soc. 4, 502–506).
 *
 * @example
 * largestOn((x) => 1 - (x - 0.3) ** 2, { from: 0, to: 1, places: 11 }) // { at: 0.3, value: 1 }
 */
export function largestOn(
  f: (x: number) => number,
  { from, to, places }: { readonly from: number; readonly to: number; readonly places: number },
): { readonly at: number; readonly value: number } {
  const step = (to - from) / (places - 1)
  let at = from
  let value = Number.NEGATIVE_INFINITY
  for (let i = 0; i < places; i++) {
    const x = i === places - 1 ? to : from + i * step
    const here = f(x)
    if (here > value) {
      at = x
      value = here
    }
  }
  const golden = (Math.sqrt(5) - 1) / 2
  let low = Math.max(from, at - step)
  let high = Math.min(to, at + step)
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)]
  let [fLeft, fRight] = [f(left), f(right)]
  for (let round = 0; round < 60; round++) {
    if (fLeft > fRight) {
      high = right
      right = left
      fRight = fLeft
      left = high - golden * (high - low)
      fLeft = f(left)
    } else {
      low = left
      left = right
      fLeft = fRight
      right = low + golden * (high - low)
      fRight = f(right)
    }
  }
  for (const [x, here] of [
    [left, fLeft],
    [right, fRight],
  ] as const)
    if (here > value) {
      at = x
      value = here
    }
  return { at, value }
}
