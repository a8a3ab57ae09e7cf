import { clearestPlace } from './clearest-place.ts'
import { type Frame, narrowBelow, pictureFigure } from './frame.ts'
import type { LadderLevel, LadderPicture } from './ladder-picture.ts'
import { type Box, line, type Mark, type TextMark } from './marks.ts'
import { textWidth } from './text-width.ts'

/**
 * What lies behind the dots of a ladder: the band of the noise.
 *
 * @example
 * const frame = { left: 0, right: 100, bottom: 50, y: (at) => 50 - at }
 * ladderGround({ noise: { upTo: 3 } }, frame)[0] // { kind: 'hatch', left: 0, top: 47, width: 100, height: 3 }
 */
export function ladderGround({ noise }: LadderPicture, frame: Frame): Mark[] {
  if (noise === undefined) return []
  const top = frame.y(noise.upTo)
  const box = { left: frame.left, top, width: frame.right - frame.left, height: frame.bottom - top }
  return [{ kind: 'hatch', ...box }, line(frame.left, top, frame.right, top, { tone: 'line', width: 1 })]
}

/**
 * What lies over the dots of a ladder: the margin, each mean with its interval and its figure, and the words of margin and
 * noise, each where it covers least.
 *
 * @example
 * const frame = { left: 0, top: 0, right: 100, bottom: 50, width: 500, x: (at) => at, y: (at) => 50 - at, textScale: 1 }
 * ladderFace({ levels: [], margin: { at: 20, label: 'margin: 1.0' } }, frame).map((mark) => mark.kind) // ['line', 'text']
 */
export function ladderFace(picture: LadderPicture, frame: Frame): Mark[] {
  const marks: Mark[] = []
  const taken: Box[] = dotsOf(picture, frame)
  const { margin, noise } = picture
  const narrow = isNarrow(frame)
  if (margin !== undefined) {
    const at = frame.y(margin.at)
    marks.push(line(frame.left, at, frame.right, at, { tone: 'ink', width: 1.75, dash: [7, 5] }))
  }
  const shown = picture.levels.filter(hasMean)
  for (const level of shown) {
    const { bar, box } = meanBar(level, frame)
    marks.push(...bar)
    taken.push(box)
  }
  for (const level of shown) {
    const label = meanLabel(level, picture, frame, taken)
    marks.push(label.mark)
    taken.push(label.box)
  }
  if (margin !== undefined) {
    const { label: long, short = long } = margin
    const label = alongLine(narrow ? [short] : [long, short], frame.y(margin.at), {
      tone: 'ink',
      ends: ['end', 'start', 'middle'],
      frame,
      taken,
    })
    marks.push(label.mark)
    taken.push(label.box)
  }
  if (noise !== undefined && !narrow) {
    const label = alongLine([noise.label], frame.y(noise.upTo), {
      tone: 'soft',
      ends: ['start', 'end', 'middle'],
      frame,
      taken,
    })
    marks.push(label.mark)
  }
  return marks
}

type LevelWithMean = LadderLevel & { readonly mean: number }

function hasMean(level: LadderLevel): level is LevelWithMean {
  return typeof level.mean === 'number'
}

function isNarrow(frame: Frame): boolean {
  return frame.width < narrowBelow * frame.textScale
}

function dotsOf({ levels }: LadderPicture, frame: Frame): Box[] {
  const r = isNarrow(frame) ? 5 : 6
  return levels.flatMap(({ x, skeins }) =>
    skeins.map(({ value }) => ({
      left: frame.x(x) - r,
      top: frame.y(value) - r,
      width: 2 * r,
      height: 2 * r,
    })),
  )
}

/** The mean stands to the right of its dots, so that it hides none. */
function besideDots(frame: Frame): { away: number; half: number } {
  return isNarrow(frame) ? { away: 9, half: 6.5 } : { away: 14, half: 9 }
}

function meanBar(level: LevelWithMean, frame: Frame): { bar: Mark[]; box: Box } {
  const { away, half } = besideDots(frame)
  const [x, y] = [frame.x(level.x) + away, frame.y(level.mean)]
  const bar: Mark[] = [line(x - half, y, x + half, y, { tone: 'accent', width: 4 })]
  const top = Math.max(frame.top - 4, frame.y(level.upper ?? level.mean))
  const bottom = Math.min(frame.bottom, frame.y(level.lower ?? level.mean))
  if (bottom > top) bar.unshift(line(x, top, x, bottom, { tone: 'accent', width: 2.5 }))
  const box = {
    left: x - half,
    top: Math.min(top, y - 2),
    width: 2 * half,
    height: Math.max(bottom, y + 2) - Math.min(top, y - 2),
  }
  return { bar, box }
}

function meanLabel(
  level: LevelWithMean,
  picture: LadderPicture,
  frame: Frame,
  taken: readonly Box[],
): { mark: TextMark; box: Box } {
  const size = 16 * frame.textScale
  const { away, half } = besideDots(frame)
  const words = pictureFigure(level.mean, picture.decimals?.picture ?? 1)
  const width = textWidth(words, { size, strong: true })
  const left = frame.x(level.x) + away + half + 5
  const middle = frame.y(level.mean)
  const above = frame.y(level.upper ?? level.mean) - 0.7 * size
  const below = frame.y(level.lower ?? level.mean) + 0.7 * size
  const heights = [middle, middle - 6, middle + 6, middle - 12, middle + 12]
  const places = [
    ...heights.map((at) => boxAt(left, at, width, size)),
    boxAt(left - half - width / 2, above, width, size),
    boxAt(left - half - width / 2, below, width, size),
  ]
  const chosen = places[clearestPlace(places, taken, plotOf(frame))] ?? boxAt(left, middle, width, size)
  const mark: TextMark = {
    kind: 'text',
    x: chosen.left,
    y: chosen.top + chosen.height - 0.2 * size,
    words,
    size,
    tone: 'accent',
    strong: true,
    halo: 'wool',
  }
  return { mark, box: chosen }
}

type AlongLine = {
  readonly tone: 'ink' | 'soft'
  /** In the order of preference. */
  readonly ends: readonly ('start' | 'middle' | 'end')[]
  readonly frame: Frame
  readonly taken: readonly Box[]
}

/** Words on a level line, above it or else below, at whichever end they cover least; the shorter ones if the longer cover much. */
function alongLine(
  wordings: readonly string[],
  at: number,
  { tone, ends, frame, taken }: AlongLine,
): { mark: TextMark; box: Box } {
  const size = 15 * frame.textScale
  const places = wordings.flatMap((words) => {
    const width = textWidth(words, { size })
    const lefts = {
      start: frame.left + 4,
      middle: (frame.left + frame.right - width) / 2,
      end: frame.right - width,
    }
    const heights = [-0.75, 0.85].map((away) => at + away * size)
    return heights.flatMap((middle) =>
      ends.map((end) => ({ words, box: boxAt(lefts[end], middle, width, size) })),
    )
  })
  const chosen = clearestPlace(
    places.map(({ box }) => box),
    taken,
    plotOf(frame),
  )
  const { words, box } = places[chosen] ?? { words: '', box: boxAt(frame.left, at, 0, size) }
  const y = box.top + box.height - 0.25 * size
  return { mark: { kind: 'text', x: box.left, y, words, size, tone, halo: 'wool' }, box }
}

function boxAt(left: number, middle: number, width: number, size: number): Box {
  return { left, top: middle - size / 2, width, height: size }
}

function plotOf(frame: Frame): Box {
  return {
    left: frame.left,
    top: frame.top - 10,
    width: frame.width - frame.left,
    height: frame.bottom - frame.top + 10,
  }
}
