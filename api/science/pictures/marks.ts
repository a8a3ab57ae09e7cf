/** A colour by its name in the look; whoever paints knows its value in light, in dark and on paper. */
export type Tone = 'ink' | 'soft' | 'line' | 'hair' | 'accent' | 'wool' | 'grey' | 'grey-ink'

export type Point = { readonly x: number; readonly y: number }
export type Box = {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

export type LineMark = {
  readonly kind: 'line'
  readonly points: readonly Point[]
  readonly tone: Tone
  readonly width: number
  readonly dash?: readonly number[]
  readonly round?: boolean
  readonly opacity?: number
}
export type DotMark = Point & {
  readonly kind: 'dot'
  readonly r: number
  readonly tone: Tone
  /** Light is 22 % of its edge’s tone, as every treated skein. */
  readonly fill: 'none' | 'light' | 'solid'
  readonly edge: number
  readonly dash?: readonly number[]
}
export type TextMark = Point & {
  readonly kind: 'text'
  /** `y` is the line on which the letters stand. */
  readonly words: string
  readonly size: number
  readonly tone: Tone
  readonly strong?: boolean
  readonly anchor?: 'start' | 'middle' | 'end'
  /** A halo of 4 px in this tone, so that a line may run behind. */
  readonly halo?: Tone
}
export type BoxMark = Box & {
  readonly kind: 'box'
  readonly fill?: Tone | `#${string}`
  readonly tone?: Tone
  readonly edge?: number
  readonly round?: number
}
/** Lines at 45° every 7 px on a light ground: noise. */
export type HatchMark = Box & { readonly kind: 'hatch' }
/** A closed shape, filled from one colour to another along a line: yarn’s own colours, before to after. */
export type ShapeMark = {
  readonly kind: 'shape'
  readonly points: readonly Point[]
  readonly fill: {
    readonly from: Point & { readonly colour: string }
    readonly to: Point & { readonly colour: string }
  }
  readonly tone: Tone
  readonly edge: number
}

/** What pictures are made of, in pixels: painted on a canvas, written as SVG, the same on both. */
export type Mark = LineMark | DotMark | TextMark | BoxMark | HatchMark | ShapeMark

/**
 * A straight line.
 *
 * @example
 * line(0, 5, 10, 5, { tone: 'ink', width: 1.5 }).points // [{ x: 0, y: 5 }, { x: 10, y: 5 }]
 */
export function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  style: Omit<LineMark, 'kind' | 'points'>,
): LineMark {
  const points = [
    { x: x1, y: y1 },
    { x: x2, y: y2 },
  ]
  return { kind: 'line', points, ...style }
}

/**
 * The slanting lines of a hatch inside a box, every `gap` px along its foot.
 *
 * @example
 * hatchLines({ left: 0, top: 0, width: 14, height: 7 }, 7).length // 2
 */
export function hatchLines({ left, top, width, height }: Box, gap = 7): (readonly [Point, Point])[] {
  const lines: (readonly [Point, Point])[] = []
  for (let foot = -height + gap; foot < width; foot += gap) {
    // Rising to the right from (foot, bottom) to (foot + height, top), cut at the sides.
    const start = Math.max(0, foot)
    const end = Math.min(width, foot + height)
    if (end <= start) continue
    lines.push([
      { x: left + start, y: top + height - (start - foot) },
      { x: left + end, y: top + height - (end - foot) },
    ])
  }
  return lines
}
