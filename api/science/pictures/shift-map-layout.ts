import { straight } from './frame.ts'
import type { Box, Point } from './marks.ts'
import type { ShiftLevel, ShiftPicture } from './shift-picture.ts'

type Range = { readonly from: number; readonly to: number }

/** The plane of a* and b*, to the same scale both ways, in a panel. */
export type Plane = {
  readonly panel: Box
  readonly a: Range
  readonly b: Range
  readonly at: (colour: { readonly a: number; readonly b: number }) => Point
}

/**
 * The plane that holds every arrow of a picture, with the axes where they are near enough to help.
 *
 * @param width Of the panel; its height follows from the data, between 0.7 and 1.15 of it.
 *
 * @example
 * const level = { before: { a: -15, b: -14 }, after: { a: -5, b: 4 }, skeins: [] }
 * planeOf({ levels: [level] }, { left: 0, top: 0, width: 200 }).panel // { left: 0, top: 0, width: 200, height: 230 }
 */
export function planeOf(
  { levels }: ShiftPicture,
  { left, top, width }: { left: number; top: number; width: number },
): Plane {
  const colours = levels.flatMap(({ before, after, skeins }) => [
    before,
    after,
    ...skeins.flatMap((skein) => [skein.before, skein.after]),
  ])
  const a = withNearNought(rangeOf(colours.map((colour) => colour.a)))
  const b = withNearNought(rangeOf(colours.map((colour) => colour.b)))
  const shape = Math.min(1.15, Math.max(0.7, (b.to - b.from) / (a.to - a.from)))
  const height = Math.round(width * shape)
  // One scale for both: the narrower one is widened about its middle.
  const perPixel = Math.max((a.to - a.from) / width, (b.to - b.from) / height)
  const [wideA, wideB] = [widened(a, perPixel * width), widened(b, perPixel * height)]
  const x = straight(wideA, { from: left, to: left + width })
  const y = straight(wideB, { from: top + height, to: top })
  return {
    panel: { left, top, width, height },
    a: wideA,
    b: wideB,
    at: (colour) => ({ x: x(colour.a), y: y(colour.b) }),
  }
}

export type Inset = {
  /** Where it stands, and the part of the map that it enlarges. */
  readonly box: Box
  readonly source: Box
  readonly times: number
  readonly levels: readonly ShiftLevel[]
  readonly at: (point: Point) => Point
}

/** Arrows shorter than this, in pixels, are hard to read where they stand. */
const shortArrow = 28
const leastTimes = 2
const mostTimes = 10

/**
 * The short arrows of a map, enlarged: how many times, and from where. Undefined when all can be read as they are.
 *
 * @example
 * const plane = { at: ({ a, b }) => ({ x: 10 * a, y: -10 * b }) }
 * const level = { before: { a: 2, b: -2 }, after: { a: 3, b: -1 } }
 * insetOf({ levels: [level] }, plane, [{ left: 100, top: 100, width: 94, height: 100 }], []).times // 5
 */
export function insetOf(
  { levels }: ShiftPicture,
  plane: Plane,
  places: readonly Box[],
  taken: readonly Box[],
): Inset | undefined {
  const [first] = places
  if (first === undefined) return undefined
  const short = levels
    .map((level) => ({ level, from: plane.at(level.before), to: plane.at(level.after) }))
    .filter(({ from, to }) => distance(from, to) < shortArrow)
    .toSorted((one, other) => distance(one.from, one.to) - distance(other.from, other.to))
  // On a small map arrows of some length are short too: the longest are left out until the rest can be enlarged.
  while (short.length > 0 && timesOf(short, first) < leastTimes) short.pop()
  if (short.length === 0) return undefined
  const [xs, ys] = spanOf(short)
  const times = timesOf(short, first)

  const middle = { x: (xs.from + xs.to) / 2, y: (ys.from + ys.to) / 2 }
  const source = around(middle, first.width / times, first.height / times)
  const box = clearest(places, [...taken, grown(source, 4)])
  const at = (point: Point): Point => ({
    x: box.left + (point.x - source.left) * times,
    y: box.top + (point.y - source.top) * times,
  })
  return { box, source, times, levels: short.map(({ level }) => level), at }
}

/**
 * The four corners of a panel in which an inset may stand.
 *
 * @example
 * cornersOf({ left: 0, top: 0, width: 300, height: 300 })[0] // { left: 137, top: 162, width: 150, height: 111 }
 */
export function cornersOf({ left, top, width, height }: Box): Box[] {
  const [w, h] = [Math.round(width * 0.5), Math.round(Math.min(height * 0.37, width * 0.42))]
  const gap = 13
  const [right, bottom] = [left + width - w - gap, top + height - h - gap - 14]
  return [
    { left: right, top: bottom, width: w, height: h },
    { left: left + gap, top: top + gap + 14, width: w, height: h },
    { left: right, top: top + gap + 14, width: w, height: h },
    { left: left + gap, top: bottom, width: w, height: h },
  ]
}

/**
 * Small boxes along an arrow, by which labels and insets know to keep off it.
 *
 * @example
 * boxesAlong({ x: 0, y: 0 }, { x: 6, y: 0 }) // [{ left: -6, width: 12 }, { left: 0, width: 12 }]
 */
export function boxesAlong(from: Point, to: Point, half = 6): Box[] {
  const count = Math.max(1, Math.ceil(distance(from, to) / half))
  return Array.from({ length: count + 1 }, (_, step) =>
    around(
      { x: from.x + ((to.x - from.x) * step) / count, y: from.y + ((to.y - from.y) * step) / count },
      2 * half,
      2 * half,
    ),
  )
}

function clearest(places: readonly Box[], taken: readonly Box[]): Box {
  const covered = (place: Box): number =>
    taken.reduce((sum, box) => {
      const width = Math.min(place.left + place.width, box.left + box.width) - Math.max(place.left, box.left)
      const height = Math.min(place.top + place.height, box.top + box.height) - Math.max(place.top, box.top)
      return width > 0 && height > 0 ? sum + width * height : sum
    }, 0)
  return places.reduce((best, place) => (covered(place) < covered(best) - 1 ? place : best))
}

function rangeOf(values: readonly number[]): Range {
  return values.length === 0 ? { from: 0, to: 0 } : { from: Math.min(...values), to: Math.max(...values) }
}

/** An eighth of room on either side; nought is taken in when it lies within half the span of the data. */
function withNearNought({ from, to }: Range): Range {
  const span = Math.max(to - from, 4)
  const [low, high] = [from - span * 0.12, to + span * 0.12]
  if (low > 0 && low < span * 0.5) return { from: -span * 0.1, to: high }
  if (high < 0 && -high < span * 0.5) return { from: low, to: span * 0.22 }
  return { from: low, to: high < span * 0.22 && high > 0 ? span * 0.22 : high }
}

function widened({ from, to }: Range, span: number): Range {
  const more = (span - (to - from)) / 2
  return { from: from - more, to: to + more }
}

function around({ x, y }: Point, width: number, height: number): Box {
  return { left: x - width / 2, top: y - height / 2, width, height }
}

function grown({ left, top, width, height }: Box, by: number): Box {
  return { left: left - by, top: top - by, width: width + 2 * by, height: height + 2 * by }
}

function distance(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y)
}

type Ends = readonly { readonly from: Point; readonly to: Point }[]

function spanOf(arrows: Ends): [Range, Range] {
  const points = arrows.flatMap(({ from, to }) => [from, to])
  return [rangeOf(points.map(({ x }) => x)), rangeOf(points.map(({ y }) => y))]
}

/** By how much these arrows can be enlarged to fill a box of this size with room for their names, in halves. */
function timesOf(arrows: Ends, { width, height }: Box): number {
  const [xs, ys] = spanOf(arrows)
  const room = Math.min(
    (width - 44) / Math.max(4, xs.to - xs.from),
    (height - 50) / Math.max(4, ys.to - ys.from),
  )
  return Math.min(mostTimes, Math.floor(room * 2) / 2)
}
