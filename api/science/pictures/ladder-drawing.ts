import { type Frame, pictureFigure, straight } from './frame.ts'
import { ladderFoot } from './ladder-foot.ts'
import { ladderFace, ladderGround } from './ladder-marks.ts'
import type { LadderPicture } from './ladder-picture.ts'
import { ladderScales } from './ladder-scales.ts'
import { line, type Mark, type Point } from './marks.ts'
import type { Scale } from './nice-scale.ts'

/**
 * The whole ladder, axes and all, for where there is no chart library: the sheets that need no script.
 *
 * @example
 * const level = { x: 0, label: '0 min', skeins: [{ session: 'a', value: 2 }], lost: [] }
 * const picture = { numeric: true, fromZero: true, levels: [level], sessions: [], brackets: [] }
 * ladderDrawing(picture, { width: 300, height: 200 }).filter((mark) => mark.kind === 'dot').length // 1
 */
export function ladderDrawing(
  picture: LadderPicture,
  { width, height }: { width: number; height: number },
): Mark[] {
  const scales = ladderScales(picture, { width })
  const [left, right, top, bottom] = [36, width - 4, 10, height - scales.foot]
  const frame: Frame = {
    left,
    right,
    top,
    bottom,
    width,
    x: straight(scales.x, { from: left, to: right }),
    y: straight(scales.y, { from: bottom, to: top }),
    textScale: 1,
  }
  return [
    ...levelGrid(scales.y, frame),
    ...ladderGround(picture, frame),
    ...sessionPoints(picture).map(({ points }) => sessionLine(points, frame)),
    ...skeinDots(picture, frame, scales.narrow ? 4 : 5),
    line(left, bottom, right, bottom, { tone: 'ink', width: 1.5 }),
    ...ladderFace(picture, frame),
    ...ladderFoot(picture, frame),
  ]
}

/** The hair lines of the upright axis with their figures, and no line of its own. */
function levelGrid(scale: Scale, frame: Frame): Mark[] {
  const size = 15 * frame.textScale
  return scale.ticks.flatMap((tick): Mark[] => {
    const y = frame.y(tick)
    const words = pictureFigure(tick, scale.decimals)
    return [
      line(frame.left, y, frame.right, y, { tone: 'hair', width: 1 }),
      { kind: 'text', x: frame.left - 10, y: y + 0.33 * size, words, size, tone: 'soft', anchor: 'end' },
    ]
  })
}

/**
 * The line of each session: its mean at each level at which it has a skein, in the order of the levels.
 *
 * @example
 * const skeins = [{ session: 'a', value: 1 }, { session: 'a', value: 3 }, { session: 'b', value: 9 }]
 * sessionPoints({ levels: [{ x: 5, skeins }], sessions: [{ key: 'a' }] }) // [{ session: 'a', points: [{ x: 5, y: 2 }] }]
 */
export function sessionPoints({ levels, sessions }: LadderPicture): { session: string; points: Point[] }[] {
  const inOrder = levels.toSorted((one, other) => one.x - other.x)
  return sessions.map(({ key }) => ({
    session: key,
    points: inOrder.flatMap(({ x, skeins }) => {
      const values = skeins.filter(({ session }) => session === key).map(({ value }) => value)
      if (values.length === 0) return []
      return [{ x, y: values.reduce((sum, value) => sum + value, 0) / values.length }]
    }),
  }))
}

function sessionLine(points: readonly Point[], frame: Frame): Mark {
  const drawn = points.map(({ x, y }) => ({ x: frame.x(x), y: frame.y(y) }))
  return { kind: 'line', points: drawn, tone: 'line', width: 1 }
}

function skeinDots({ levels }: LadderPicture, frame: Frame, r: number): Mark[] {
  return levels.flatMap(({ x, skeins }) =>
    skeins.map(
      ({ value }): Mark => ({
        kind: 'dot',
        x: frame.x(x),
        y: frame.y(value),
        r,
        tone: 'ink',
        fill: 'light',
        edge: 1.5,
      }),
    ),
  )
}
