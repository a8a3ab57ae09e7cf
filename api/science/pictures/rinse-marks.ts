import { clearestPlace } from './clearest-place.ts'
import type { Frame } from './frame.ts'
import { type Box, line, type Mark, type TextMark } from './marks.ts'
import type { RinsePicture, RinsePoint } from './rinse-picture.ts'
import { textWidth } from './text-width.ts'

export type RinseScales = {
  readonly x: { readonly from: number; readonly to: number }
  /** Powers of ten, per cent. */
  readonly y: { readonly from: number; readonly to: number; readonly ticks: readonly number[] }
}

/**
 * The axes of a rinse fall: rinses from the bath on, and per cent in powers of ten down to one below the least measured.
 *
 * @example
 * const points = [{ at: 0, share: 100 }, { at: 4, share: 1.8 }]
 * rinseScales({ measured: { points }, dilution: { points: [] } }) // { x: { from: 0, to: 4 }, y: { ticks: [0.1, 1, 10, 100] } }
 */
export function rinseScales({ measured, dilution, clear }: RinsePicture): RinseScales {
  const shares = [...measured.points.map(({ share }) => share), clear?.at ?? 100].filter((share) => share > 0)
  const least = Math.max(-3, Math.floor(Math.log10(Math.min(...shares)) - 0.3))
  const most = Math.ceil(Math.log10(Math.max(100, ...shares)) - 1e-9)
  const ats = [...measured.points, ...dilution.points].map(({ at }) => at)
  return {
    x: {
      from: 0,
      to: Math.max(
        1,
        ...measured.points.map(({ at }) => at),
        measured.points.length === 0 ? Math.max(...ats) : 1,
      ),
    },
    y: {
      from: 10 ** least,
      to: 10 ** most,
      ticks: Array.from({ length: most - least + 1 }, (_, place) => 10 ** (least + place)),
    },
  }
}

/**
 * Over the lines of a rinse fall: where the eye calls it clear, the names of both lines, the remark, the rinses’ numbers.
 *
 * @example
 * const frame = { left: 0, top: 0, right: 100, bottom: 50, width: 500, x: (at) => at, y: (at) => 50 - at, textScale: 1 }
 * const picture = { measured: { label: '', points: [{ at: 1, share: 40 }] }, dilution: { label: '', points: [] } }
 * rinseFace(picture, frame).map((mark) => mark.words) // ['bath', '1']
 */
export function rinseFace(picture: RinsePicture, frame: Frame): Mark[] {
  const size = 15 * frame.textScale
  const taken: Box[] = linesAsBoxes(picture, frame)
  const marks: Mark[] = []
  const put = (words: string, style: Pick<TextMark, 'tone' | 'strong'>, places: readonly Box[]): void => {
    const box = places[clearestPlace(places, taken, plotOf(frame))]
    if (box === undefined || words === '') return
    taken.push(box)
    marks.push({ kind: 'text', x: box.left, y: box.top + 0.78 * size, words, size, halo: 'wool', ...style })
  }
  if (picture.clear !== undefined) {
    const y = frame.y(picture.clear.at)
    marks.push(line(frame.left, y, frame.right, y, { tone: 'ink', width: 1.75, dash: [7, 5] }))
    const width = textWidth(picture.clear.label, { size })
    put(picture.clear.label, { tone: 'ink' }, [
      { left: frame.right - width, top: y + 5, width, height: size },
      { left: frame.right - width, top: y - size - 5, width, height: size },
    ])
  }
  put(
    picture.measured.label,
    { tone: 'accent', strong: true },
    alongside(picture.measured, frame, size, true),
  )
  put(picture.dilution.label, { tone: 'soft' }, alongside(picture.dilution, frame, size, false))
  if (picture.remark !== undefined) {
    const width = textWidth(picture.remark, { size })
    // Where there is no room for it beside the first fall, the line of the caption says it.
    if (width < 0.75 * (frame.right - frame.left))
      put(picture.remark, { tone: 'ink' }, [
        { left: frame.right - width, top: frame.top + 2, width, height: size },
      ])
  }
  const rinses = Array.from({ length: Math.round(rinseScales(picture).x.to) + 1 }, (_, rinse) => rinse)
  const every = Math.ceil((rinses.length * 34 * frame.textScale) / Math.max(1, frame.right - frame.left))
  return [
    ...marks,
    ...rinses
      .filter((rinse) => rinse % every === 0)
      .map(
        (rinse): Mark => ({
          kind: 'text',
          x: frame.x(rinse),
          y: frame.bottom + 26 * frame.textScale,
          words: rinse === 0 ? 'bath' : String(rinse),
          size,
          tone: 'ink',
          anchor: 'middle',
        }),
      ),
  ]
}

/** Places for a name to the right of a line, from its middle outwards. */
function alongside(
  { label, points }: { label: string; points: readonly RinsePoint[] },
  frame: Frame,
  size: number,
  strong: boolean,
): Box[] {
  const width = textWidth(label, { size, strong })
  const seen = points
    .map(({ at, share }) => ({ x: frame.x(at), y: frame.y(share) }))
    .filter(({ x, y }) => x <= frame.right + 1 && y <= frame.bottom + 1)
  const fromMiddle = seen.toSorted(
    (one, other) =>
      Math.abs(one.x - (frame.left + frame.right) / 2) - Math.abs(other.x - (frame.left + frame.right) / 2),
  )
  return fromMiddle.flatMap(({ x, y }) => [
    { left: x + 12, top: y - size - 6, width, height: size },
    { left: x + 14, top: y - size / 2, width, height: size },
    { left: x + 14, top: y - 2.2 * size, width, height: size },
  ])
}

/** Both lines as small boxes, so that no name is put on them. */
function linesAsBoxes({ measured, dilution }: RinsePicture, frame: Frame): Box[] {
  return [measured, dilution].flatMap(({ points }) =>
    points.slice(1).flatMap((to, place) => {
      const from = points[place] ?? to
      return Array.from({ length: 9 }, (_, step) => {
        const part = step / 8
        const x = frame.x(from.at) + part * (frame.x(to.at) - frame.x(from.at))
        const y = frame.y(from.share) + part * (frame.y(to.share) - frame.y(from.share))
        return { left: x - 5, top: y - 5, width: 10, height: 10 }
      })
    }),
  )
}

function plotOf({ left, right, top, bottom }: Frame): Box {
  return { left, top: top - 4, width: right - left, height: bottom - top + 4 }
}
