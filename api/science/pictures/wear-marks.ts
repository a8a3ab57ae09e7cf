import { labToSrgb } from '../colour/lab-to-srgb.ts'
import { clearestPlace } from './clearest-place.ts'
import { type Frame, pictureFigure } from './frame.ts'
import { type Box, line, type Mark, type Point } from './marks.ts'
import { niceScale, type Scale } from './nice-scale.ts'
import { spreadLabels } from './spread-labels.ts'
import { textWidth } from './text-width.ts'
import type { WearGroup, WearPicture, WearPoint } from './wear-picture.ts'

export type WearScales = {
  readonly x: { readonly from: number; readonly to: number }
  readonly y: Scale
  /** Room to the right of the plot for the names of the lines. */
  readonly right: number
}

/**
 * The two axes of a wear curve, and the room for the names at the ends of its lines.
 *
 * @example
 * const group = { key: 'a', label: '0 min', chosen: false, points: [{ at: 3, mean: 11.1 }] }
 * wearScales({ ticks: [{ at: 0 }, { at: 3 }], groups: [group] }) // { x: { from: 0, to: 3 }, y: { to: 12 } }
 */
export function wearScales(picture: WearPicture, { textScale = 1 }: { textScale?: number } = {}): WearScales {
  const ats = [
    ...picture.ticks.map(({ at }) => at),
    ...linesOf(picture).flatMap((points) => points.map(({ at }) => at)),
  ]
  const tops = linesOf(picture).flatMap((points) =>
    points.map(({ mean, upper }) => Math.max(mean, upper ?? mean)),
  )
  const widths = endLabels(picture).map(
    ({ words, colour }) => labelWidth(words, textScale) + (colour === undefined ? 0 : 32),
  )
  return {
    x: { from: Math.min(0, ...ats), to: Math.max(1, ...ats) },
    y: niceScale(0, Math.max(picture.noise?.upTo ?? 0, 0.1, ...tops)),
    right: Math.max(20, ...widths) + 18,
  }
}

/**
 * The pieces of a line between readings: dotted where the axis has a step between them that was not read.
 *
 * @example
 * const points = [{ at: 0, mean: 0 }, { at: 3, mean: 2 }]
 * wearPieces(points, [0, 1, 2, 3]).map((piece) => piece.read) // [false]
 */
export function wearPieces(
  points: readonly WearPoint[],
  steps: readonly number[],
): { readonly from: WearPoint; readonly to: WearPoint; readonly read: boolean }[] {
  const inOrder = points.toSorted((one, other) => one.at - other.at)
  return inOrder.slice(1).map((to, place) => {
    const from = inOrder[place] ?? to
    return { from, to, read: !steps.some((step) => step > from.at && step < to.at) }
  })
}

/**
 * Behind the lines: the band of the noise.
 *
 * @example
 * const frame = { left: 0, right: 100, bottom: 50, y: (at) => 50 - at }
 * wearGround({ noise: { upTo: 3 } }, frame)[0] // { kind: 'hatch', top: 47, height: 3 }
 */
export function wearGround({ noise }: WearPicture, frame: Frame): Mark[] {
  if (noise === undefined) return []
  const top = frame.y(noise.upTo)
  return [
    { kind: 'hatch', left: frame.left, top, width: frame.right - frame.left, height: frame.bottom - top },
    line(frame.left, top, frame.right, top, { tone: 'line', width: 1 }),
  ]
}

/**
 * Over the lines: the interval at the last reading, the names at the ends, the numbers of the wools, the names of the steps.
 *
 * @example
 * const frame = { left: 0, top: 0, right: 100, bottom: 50, width: 500, x: (at) => at, y: (at) => 50 - at, textScale: 1 }
 * const group = { key: 'a', label: '0 min', chosen: false, points: [{ at: 80, mean: 11.14 }] }
 * wearFace({ ticks: [], groups: [group] }, frame) // [{ words: '0 min, 11.1', x: 114 }]
 */
export function wearFace(picture: WearPicture, frame: Frame): Mark[] {
  return [
    ...picture.groups.flatMap((group) => lastInterval(group, frame)),
    ...woolNumbers(picture, frame),
    ...namesAtEnds(picture, frame),
    ...stepNames(picture, frame),
  ]
}

function lastInterval({ points, chosen }: WearGroup, frame: Frame): Mark[] {
  const last = points.toSorted((one, other) => one.at - other.at).at(-1)
  if (typeof last?.lower !== 'number' || typeof last.upper !== 'number') return []
  const x = frame.x(last.at)
  const [top, bottom] = [
    Math.max(frame.top, frame.y(last.upper)),
    Math.min(frame.bottom, frame.y(last.lower)),
  ]
  return [line(x, top, x, bottom, { tone: chosen ? 'accent' : 'ink', width: 2.5 })]
}

type EndLabel = { words: string; value: number; at: number; chosen: boolean; colour: string | undefined }

/** Groups that end at the same figure share one label, so that none stands on another. The chosen one keeps its own. */
function endLabels({ groups, decimals }: WearPicture): EndLabel[] {
  const labels: (EndLabel & { names: string[] })[] = []
  for (const group of groups) {
    const last = group.points.toSorted((one, other) => one.at - other.at).at(-1)
    if (last === undefined) continue
    const value = pictureFigure(last.mean, decimals?.picture ?? 1)
    const colour = group.colour === undefined ? undefined : labToSrgb(group.colour).hex
    const same = labels.find(
      (it) => !it.chosen && it.colour === undefined && it.words === value && it.at === last.at,
    )
    if (same !== undefined && !group.chosen && colour === undefined)
      same.names.push(group.short ?? group.label)
    else
      labels.push({
        words: value,
        value: last.mean,
        at: last.at,
        chosen: group.chosen,
        colour,
        names: [group.label],
      })
  }
  return labels.map(({ names, words, ...label }) => {
    const shared = names.length > 1 ? [shortOf(groups, names[0]), ...names.slice(1)] : names
    const said =
      shared.length > 1 ? `${shared.slice(0, -1).join(', ')} and ${shared.at(-1)}` : shared.join('')
    return { ...label, words: label.colour === undefined ? `${said}, ${words}` : said }
  })
}

function shortOf(groups: readonly WearGroup[], label: string | undefined): string {
  const group = groups.find((it) => it.label === label)
  return group?.short ?? label ?? ''
}

function namesAtEnds(picture: WearPicture, frame: Frame): Mark[] {
  const size = 16 * frame.textScale
  const labels = endLabels(picture)
  const places = spreadLabels(
    labels.map(({ value, colour }) => ({
      at: frame.y(value),
      size: colour === undefined ? 19 * frame.textScale : 26 * frame.textScale,
    })),
    { from: frame.top - 10, to: frame.bottom + 12 },
  )
  return labels.flatMap(({ words, at, chosen, colour }, index): Mark[] => {
    const y = places[index] ?? 0
    const x = Math.max(frame.x(at), frame.right) + 14
    const name: Mark = {
      kind: 'text',
      x: colour === undefined ? x : x + 32,
      y: y + 0.33 * size,
      words,
      size,
      tone: chosen ? 'accent' : 'ink',
      strong: chosen,
    }
    return colour === undefined ? [name] : [...chip(x, y, colour), name]
  })
}

function chip(x: number, y: number, colour: string): Mark[] {
  return [
    { kind: 'box', left: x, top: y - 10, width: 24, height: 20, fill: 'grey' },
    { kind: 'box', left: x + 3, top: y - 7, width: 18, height: 14, fill: `#${colour.slice(1)}` },
  ]
}

function woolNumbers({ wools = [] }: WearPicture, frame: Frame): Mark[] {
  const taken: Box[] = []
  return wools.flatMap(({ number, points }): Mark[] => {
    const drawn = points
      .toSorted((one, other) => one.at - other.at)
      .map(({ at, mean }) => ({ x: frame.x(at), y: frame.y(mean) }))
    const middles = drawn.slice(1).map((to, place) => middle(drawn[place] ?? to, to))
    const boxes = middles
      .toReversed()
      .map(({ x, y }) => ({ left: x - 10, top: y - 10, width: 20, height: 20 }))
    const box = boxes[clearestPlace(boxes, taken)]
    if (box === undefined) return []
    taken.push(box)
    return [
      {
        kind: 'box',
        left: box.left + 2,
        top: box.top + 2,
        width: 16,
        height: 16,
        fill: 'wool',
        tone: 'line',
        edge: 1,
        round: 1,
      },
      {
        kind: 'text',
        x: box.left + 10,
        y: box.top + 14.5,
        words: number,
        size: 13,
        tone: 'soft',
        strong: true,
        anchor: 'middle',
      },
    ]
  })
}

function stepNames({ ticks }: WearPicture, frame: Frame): Mark[] {
  const size = 15 * frame.textScale
  const named = (words: readonly string[]) =>
    ticks.map(({ at }, place) => {
      const name = words[place] ?? ''
      const half = textWidth(name, { size }) / 2 + 4
      return { name, from: frame.x(at) - half, to: frame.x(at) + half, x: frame.x(at) }
    })
  let names = named(ticks.map(({ label }) => label))
  if (names.some(({ from }, place) => from < (names[place - 1]?.to ?? Number.NEGATIVE_INFINITY)))
    names = named(ticks.map(({ label, short }) => short ?? label))
  const kept: typeof names = []
  for (const name of names) if (kept.every(({ to }) => name.from >= to)) kept.push(name)
  return kept.map(({ name, x }) => ({
    kind: 'text',
    x,
    y: frame.bottom + 26 * frame.textScale,
    words: name,
    size,
    tone: 'ink',
    anchor: 'middle',
  }))
}

function linesOf({ groups, wools = [] }: WearPicture): (readonly WearPoint[])[] {
  return [...groups, ...wools].map(({ points }) => points)
}

function labelWidth(words: string, textScale: number): number {
  return textWidth(words, { size: 16 * textScale, strong: true })
}

function middle(from: Point, to: Point): Point {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
}
