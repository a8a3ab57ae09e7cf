import { labToSrgb } from '../colour/lab-to-srgb.ts'
import { colourArrow } from './arrow-shape.ts'
import { clearestPlace } from './clearest-place.ts'
import { pictureFigure } from './frame.ts'
import { lightnessMarks, rowsOfChanges } from './lightness-marks.ts'
import { type Box, line, type Mark, type Point } from './marks.ts'
import { niceScale } from './nice-scale.ts'
import { boxesAlong, cornersOf, type Inset, insetOf, type Plane, planeOf } from './shift-map-layout.ts'
import type { ShiftLevel, ShiftPicture } from './shift-picture.ts'
import { textWidth } from './text-width.ts'

/** Below this width lightness stands under the map, not beside it. */
const stackedBelow = 520

export type ShiftDrawing = { readonly marks: Mark[]; readonly width: number; readonly height: number }

/**
 * The whole shift map: the plane with its arrows and perhaps an inset, and lightness beside it or, when narrow, below.
 *
 * @example
 * const level = { label: '0 min', short: '0', before: { L: 50, a: -8, b: -2 }, after: { L: 57, a: -2, b: 6 }, skeins: [] }
 * shiftMap({ levels: [level] }, { width: 680 }).marks.filter((mark) => mark.kind === 'shape').length // 2
 */
export function shiftMap(
  picture: ShiftPicture,
  { width, textScale = 1 }: { width: number; textScale?: number },
): ShiftDrawing {
  const narrow = width < stackedBelow * textScale
  const side = 42 * textScale
  const lightWidth = narrow ? width - side : Math.round((width - 2 * side) * 0.38)
  const planeWidth = narrow ? width - side : width - 2 * side - lightWidth
  const plane = planeOf(picture, { left: side, top: 4, width: planeWidth })
  const foot = plane.panel.top + plane.panel.height + 34 * textScale
  const light: Box = narrow
    ? { left: side, top: foot + 14, width: lightWidth, height: 120 }
    : { left: width - lightWidth, top: plane.panel.top, width: lightWidth, height: plane.panel.height }
  const below = (35 + 19 * rowsOfChanges(picture.levels, light.width, 15 * textScale)) * textScale
  return {
    marks: [...planeMarks(picture, plane, textScale), ...lightnessMarks(picture, light, textScale)],
    width,
    height: (narrow ? light.top + light.height : plane.panel.top + plane.panel.height) + below,
  }
}

function planeMarks(picture: ShiftPicture, plane: Plane, textScale: number): Mark[] {
  const { panel } = plane
  const size = 15 * textScale
  const words = directionWords(plane, size)
  const taken: Box[] = [
    ...picture.levels.flatMap(({ before, after }) => boxesAlong(plane.at(before), plane.at(after))),
    ...words.map(({ box }) => box),
  ]
  const inset = insetOf(picture, plane, cornersOf(panel), taken)
  const inInset = (level: ShiftLevel): boolean => inset?.levels.includes(level) ?? false
  if (inset !== undefined) taken.push(inset.box, inset.source)

  return [
    { kind: 'box', ...panel, fill: 'grey' },
    ...axes(plane, size),
    ...words.map(({ mark }) => mark),
    ...picture.levels.flatMap(({ skeins }) =>
      skeins.map((skein): Mark => {
        const points = [plane.at(skein.before), plane.at(skein.after)]
        return { kind: 'line', points, tone: 'grey-ink', width: 1, opacity: 0.7 }
      }),
    ),
    ...longestFirst(picture.levels, plane).map((level) => arrow(level, plane.at)),
    ...(inset === undefined ? [] : insetMarks(inset, plane, size)),
    ...labels(
      picture.levels.filter((level) => !inInset(level)).map((level) => ({ level, words: level.label })),
      plane.at,
      { taken, within: panel, size, first: 'middle' },
    ),
  ]
}

function insetMarks(inset: Inset, plane: Plane, size: number): Mark[] {
  const { box, source, times, levels } = inset
  const at = (colour: { a: number; b: number }): Point => inset.at(plane.at(colour))
  const says = `${pictureFigure(times, Number.isInteger(times) ? 0 : 1)} times larger`
  const wide = textWidth(says, { size: size - 1 })
  const saysBox = {
    left: box.left + box.width - wide - 7,
    top: box.top + box.height - size - 7,
    width: wide,
    height: size,
  }
  const taken = [...levels.flatMap(({ before, after }) => boxesAlong(at(before), at(after))), saysBox]
  const toRight = box.left > source.left
  const [near, far] = toRight ? [source.left + source.width, box.left] : [source.left, box.left + box.width]
  return [
    line(near, source.top, far, box.top, { tone: 'grey-ink', width: 1 }),
    line(near, source.top + source.height, far, box.top + box.height, { tone: 'grey-ink', width: 1 }),
    { kind: 'box', ...source, tone: 'grey-ink', edge: 1 },
    { kind: 'box', ...box, fill: 'grey', tone: 'grey-ink', edge: 1 },
    ...longestFirst(levels, plane).map((level) => arrow(level, at)),
    {
      kind: 'text',
      x: saysBox.left,
      y: box.top + box.height - 8,
      words: says,
      size: size - 1,
      tone: 'grey-ink',
    },
    ...labels(
      levels.map((level) => ({ level, words: level.short })),
      at,
      { taken, within: box, size, first: 'tip' },
    ),
  ]
}

function arrow({ before, after }: ShiftLevel, at: (colour: { a: number; b: number }) => Point): Mark {
  return colourArrow(at(before), at(after), { before: labToSrgb(before).hex, after: labToSrgb(after).hex })
}

/** Short arrows lie over long ones, so that none is hidden. */
function longestFirst(levels: readonly ShiftLevel[], plane: Plane): ShiftLevel[] {
  const length = ({ before, after }: ShiftLevel): number => {
    const [from, to] = [plane.at(before), plane.at(after)]
    return Math.hypot(to.x - from.x, to.y - from.y)
  }
  return levels.toSorted((one, other) => length(other) - length(one))
}

/**
 * Names beside their arrows: at the middle, the tip or the tail, on whichever side covers least. Where arrows lie on each
 * other the tip comes first, because it alone tells them apart.
 */
function labels(
  named: readonly { readonly level: ShiftLevel; readonly words: string }[],
  at: (colour: { a: number; b: number }) => Point,
  {
    taken,
    within,
    size,
    first,
  }: { taken: readonly Box[]; within: Box; size: number; first: 'middle' | 'tip' },
): Mark[] {
  const covered = [...taken]
  return named.flatMap(({ level, words }): Mark[] => {
    const [from, to] = [at(level.before), at(level.after)]
    const width = textWidth(words, { size, strong: true })
    const beside = (x: number, y: number): Box[] => [
      { left: x - width - 14, top: y - size / 2, width, height: size },
      { left: x + 14, top: y - size / 2, width, height: size },
    ]
    const middle = beside((from.x + to.x) / 2, (from.y + to.y) / 2)
    const tip = [
      ...beside(to.x, to.y),
      { left: to.x - width / 2, top: to.y - size - 10, width, height: size },
    ]
    const tail = [
      ...beside(from.x, from.y),
      { left: from.x - width / 2, top: from.y + 10, width, height: size },
    ]
    const places = first === 'tip' ? [...tip, ...tail, ...middle] : [...middle, ...tip, ...tail]
    const box = places[clearestPlace(places, covered, within)]
    if (box === undefined) return []
    covered.push(box)
    return [
      { kind: 'text', x: box.left, y: box.top + 0.8 * size, words, size, tone: 'grey-ink', strong: true },
    ]
  })
}

function axes({ panel, a, b, at }: Plane, size: number): Mark[] {
  const nought = at({ a: 0, b: 0 })
  const [right, bottom] = [panel.left + panel.width, panel.top + panel.height]
  const marks: Mark[] = []
  if (nought.x > panel.left && nought.x < right)
    marks.push(line(nought.x, panel.top, nought.x, bottom, { tone: 'grey-ink', width: 1 }))
  if (nought.y > panel.top && nought.y < bottom)
    marks.push(line(panel.left, nought.y, right, nought.y, { tone: 'grey-ink', width: 1 }))
  const ticks = niceScale(b.from, b.to, { fewest: 4, most: 6 })
  const inside = (range: { from: number; to: number }): number[] => {
    const first = Math.ceil(range.from / ticks.step + 0.15)
    const last = Math.floor(range.to / ticks.step - 0.15)
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, place) => (first + place) * ticks.step)
  }
  for (const tick of inside(b))
    marks.push({
      kind: 'text',
      x: panel.left - 12,
      y: at({ a: 0, b: tick }).y + 0.33 * size,
      words: pictureFigure(tick, ticks.decimals),
      size,
      tone: 'soft',
      anchor: 'end',
    })
  for (const tick of inside(a))
    marks.push({
      kind: 'text',
      x: at({ a: tick, b: 0 }).x,
      y: bottom + 1.6 * size,
      words: pictureFigure(tick, ticks.decimals),
      size,
      tone: 'soft',
      anchor: 'middle',
    })
  return marks
}

/** Greener, redder, yellower, bluer at the ends of the axes, or of the panel where an axis is far off. */
function directionWords({ panel, at }: Plane, size: number): { mark: Mark; box: Box }[] {
  const nought = at({ a: 0, b: 0 })
  const [right, bottom] = [panel.left + panel.width, panel.top + panel.height]
  const hasX = nought.y > panel.top + 30 && nought.y < bottom - 30
  const hasY = nought.x > panel.left + 30 && nought.x < right - 8
  const row = (hasX ? nought.y : panel.top + panel.height / 2) - 6
  const column = hasY ? nought.x - 8 : panel.left + panel.width / 2
  const word = (words: string, x: number, y: number, anchor: 'start' | 'end'): { mark: Mark; box: Box } => {
    const width = textWidth(words, { size: size - 0.5 })
    const mark: Mark = { kind: 'text', x, y, words, size: size - 0.5, tone: 'grey-ink', anchor }
    return { mark, box: { left: anchor === 'end' ? x - width : x, top: y - size, width, height: size + 3 } }
  }
  const redder = word('redder', right - 7, row, 'end')
  const roomForRedder = !hasY || redder.box.left > nought.x + 6
  return [
    word('greener', panel.left + 7, row, 'start'),
    ...(roomForRedder ? [redder] : []),
    word('yellower', column, panel.top + 1.15 * size, 'end'),
    word('bluer', column, bottom - 0.5 * size, 'end'),
  ]
}
