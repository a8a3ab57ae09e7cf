import { labToSrgb } from '../colour/lab-to-srgb.ts'
import { colourArrow } from './arrow-shape.ts'
import { pictureFigure, straight } from './frame.ts'
import type { Box, Mark } from './marks.ts'
import { niceScale } from './nice-scale.ts'
import type { ShiftLevel, ShiftPicture } from './shift-picture.ts'
import { textWidth } from './text-width.ts'

/**
 * Lightness by level beside a shift map: an arrow from before to after on the same grey, the change in figures below.
 *
 * @example
 * const level = { short: '35', before: { L: 37, a: -15, b: -14 }, after: { L: 37.9, a: -14, b: -13 } }
 * const marks = lightnessMarks({ levels: [level] }, { left: 0, top: 0, width: 90, height: 100 }, 1)
 * marks.at(-1).words // '+0.9'
 */
export function lightnessMarks({ levels }: ShiftPicture, panel: Box, textScale: number): Mark[] {
  if (levels.length === 0) return []
  const size = 15 * textScale
  const lights = levels.flatMap(({ before, after }) => [before.L, after.L])
  const scale = niceScale(Math.min(...lights) - 1, Math.max(...lights) + 1, {
    fewest: 2,
    most: panel.height < 200 ? 3 : 5,
  })
  const pad = panel.height * 0.03
  const y = straight(scale, { from: panel.top + panel.height - pad, to: panel.top + pad })
  const step = panel.width / levels.length
  const x = (place: number): number => panel.left + (place + 0.5) * step
  const lighter = levels.reduce((sum, { before, after }) => sum + after.L - before.L, 0) >= 0
  return [
    { kind: 'box', ...panel, fill: 'grey' },
    ...scale.ticks.map(
      (tick): Mark => ({
        kind: 'text',
        x: panel.left - 12,
        y: y(tick) + 0.33 * size,
        words: pictureFigure(tick, scale.decimals),
        size,
        tone: 'soft',
        anchor: 'end',
      }),
    ),
    wordInCorner(lighter ? 'lighter' : 'darker', lighter, panel, size),
    ...levels.map(({ before, after }, place) =>
      colourArrow(
        { x: x(place), y: y(before.L) },
        { x: x(place), y: y(after.L) },
        { before: labToSrgb(before).hex, after: labToSrgb(after).hex },
      ),
    ),
    ...levelsBelow(levels, x, panel, size),
  ]
}

/** In the direction in which most went, where arrows seldom reach. */
function wordInCorner(words: string, top: boolean, panel: Box, size: number): Mark {
  const y = top ? panel.top + 1.15 * size : panel.top + panel.height - 0.5 * size
  return {
    kind: 'text',
    x: panel.left + panel.width - 7,
    y,
    words,
    size: size - 0.5,
    tone: 'grey-ink',
    anchor: 'end',
  }
}

/**
 * In how many rows the changes stand under the levels, so that none touch: one where there is room, at most three.
 *
 * @param width Of the panel above them; `size` is that of the letters.
 *
 * @example
 * const level = { before: { L: 50 }, after: { L: 57.3 } }
 * [rowsOfChanges([level, level], 200, 15), rowsOfChanges([level, level], 60, 15)] // [1, 2]
 */
export function rowsOfChanges(levels: readonly ShiftLevel[], width: number, size: number): number {
  const widest = Math.max(0, ...levels.map((level) => textWidth(change(level), { size, strong: true }))) + 4
  return Math.min(3, Math.max(1, Math.ceil((widest * levels.length) / width)))
}

function change({ before, after }: ShiftLevel): string {
  const words = pictureFigure(after.L - before.L, 1)
  return after.L > before.L && Number(words) !== 0 ? `+${words}` : words
}

function levelsBelow(
  levels: readonly ShiftLevel[],
  x: (place: number) => number,
  panel: Box,
  size: number,
): Mark[] {
  const foot = panel.top + panel.height
  const rows = rowsOfChanges(levels, panel.width, size)
  return levels.flatMap((level, place): Mark[] => {
    const strong = level.chosen
    const tone = level.chosen ? 'accent' : 'ink'
    // The outermost are kept inside the drawing, whose edge the panel is.
    const inside = (words: string): number => {
      const half = textWidth(words, { size, strong }) / 2
      return Math.max(panel.left + half, Math.min(panel.left + panel.width - half, x(place)))
    }
    const text = (words: string, y: number): Mark => ({
      kind: 'text',
      x: inside(words),
      y,
      words,
      size,
      tone,
      strong,
      anchor: 'middle',
    })
    return [
      text(level.short, foot + 1.6 * size),
      text(change(level), foot + (2.85 + 1.25 * (place % rows)) * size),
    ]
  })
}
