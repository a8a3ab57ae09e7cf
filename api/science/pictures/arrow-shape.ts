import type { Mark, Point } from './marks.ts'

const shaft = 6.5
const head = { length: 14, width: 15 }
/** Below this an arrow has no length that could be seen, and a point stands for it. */
const tooShort = 2

/**
 * An arrow in the yarn’s own colours, from before to after, with a casing of grey-ink, since a colour may equal the grey.
 *
 * @example
 * colourArrow({ x: 0, y: 0 }, { x: 1, y: 0 }, { before: '#206070', after: '#2a6570' }).kind // 'dot'
 */
export function colourArrow(
  from: Point,
  to: Point,
  colours: { readonly before: string; readonly after: string },
): Mark {
  const points = arrowShape(from, to)
  if (points.length === 0)
    return { kind: 'dot', x: to.x, y: to.y, r: 3, tone: 'grey-ink', fill: 'solid', edge: 0 }
  return {
    kind: 'shape',
    points,
    fill: { from: { ...from, colour: colours.before }, to: { ...to, colour: colours.after } },
    tone: 'grey-ink',
    edge: 1,
  }
}

/**
 * The outline of an arrow. A short one is all head; one that cannot be seen has no outline.
 *
 * @example
 * arrowShape({ x: 0, y: 0 }, { x: 40, y: 0 })[3] // { x: 40, y: 0 }
 */
export function arrowShape(from: Point, to: Point): Point[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  if (length < tooShort) return []
  const [alongX, alongY] = [(to.x - from.x) / length, (to.y - from.y) / length]
  const headLength = Math.min(head.length, length)
  const neck = length - headLength
  const at = (along: number, aside: number): Point => ({
    x: from.x + along * alongX - aside * alongY,
    y: from.y + along * alongY + aside * alongX,
  })
  const half = shaft / 2
  if (neck === 0) return [at(0, head.width / 2), at(length, 0), at(0, -head.width / 2)]
  return [
    at(0, half),
    at(neck, half),
    at(neck, head.width / 2),
    at(length, 0),
    at(neck, -head.width / 2),
    at(neck, -half),
    at(0, -half),
  ]
}
