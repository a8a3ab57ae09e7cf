import { narrowBelow } from './frame.ts'
import type { LadderPicture } from './ladder-picture.ts'
import { niceScale, type Scale } from './nice-scale.ts'

export type LadderScales = {
  /** The axis of the levels runs from and to these, with room for the figures beside the last mean. */
  readonly x: { readonly from: number; readonly to: number }
  readonly y: Scale
  /** Room under the axis for the levels’ names, the lost, the brackets and the window, in pixels. */
  readonly foot: number
  readonly narrow: boolean
}

/** At most so many lost skeins have their words under the axis; of more the lane says how many. */
const mostLostInWords = 3
const rowOfLost = 22
const rowOfRange = 34
const rowOfDifference = 30

/**
 * The two axes of a ladder and the room that it needs below, for a plot of about so many pixels across.
 *
 * @param textScale 1 at the usual text size.
 *
 * @example
 * const level = { x: 0, skeins: [{ value: 11.4 }], lost: [] }
 * ladderScales({ numeric: false, fromZero: true, brackets: [], levels: [level] }, { width: 700 }).y.to // 12
 */
export function ladderScales(
  picture: LadderPicture,
  { width, textScale = 1 }: { width: number; textScale?: number },
): LadderScales {
  const narrow = width < narrowBelow * textScale
  const plot = Math.max(80, width - 40 * textScale)
  const places = picture.levels.map(({ x }) => x)
  const [low, high] = [Math.min(...places), Math.max(...places)]
  const span = high - low || 1
  return {
    x:
      picture.numeric && high > low
        ? padded(low, span, plot, narrow, textScale)
        : { from: low - 0.45, to: high + 0.55 },
    y: niceScale(...extent(picture)),
    foot: ladderRows(picture).height * textScale,
    narrow,
  }
}

function padded(
  low: number,
  span: number,
  plot: number,
  narrow: boolean,
  textScale: number,
): { from: number; to: number } {
  const before = (narrow ? 10 : 26) * textScale
  const after = (narrow ? 46 : 62) * textScale
  const perPixel = span / Math.max(40, plot - before - after)
  return { from: low - before * perPixel, to: low + span + after * perPixel }
}

function extent({ levels, margin, noise, fromZero }: LadderPicture): [number, number] {
  const values = [
    ...levels.flatMap(({ skeins }) => skeins.map(({ value }) => value)),
    ...levels.flatMap(({ mean, lower, upper }) => [mean, lower, upper]),
    margin?.at,
    noise?.upTo,
    fromZero ? 0 : undefined,
  ].filter((value): value is number => typeof value === 'number' && Number.isFinite(value))
  const [low, high] = [Math.min(...values), Math.max(...values)]
  // Nothing read yet, or no loss at all: an axis all the same.
  if (values.length === 0 || (fromZero && high <= 0)) return [0, 1]
  // An interval may reach below nought though no loss does; the axis of a loss still starts there.
  return [fromZero ? 0 : low, Math.max(high, fromZero ? 0 : low)]
}

export type LadderRows = {
  /** The middle of each row below the axis, at the usual text size. */
  readonly lost: readonly number[]
  readonly lostInWords: boolean
  readonly brackets: readonly number[]
  readonly window: number | undefined
  readonly height: number
}

/**
 * The rows under the axis of a ladder, from the axis down: names of levels, the lost, a row for each bracket, the window.
 *
 * @example
 * ladderRows({ levels: [], brackets: [{ kind: 'range' }], window: { from: 35, to: 35 } }) // { brackets: [48], window: 72, height: 84 }
 */
export function ladderRows({ levels, brackets, window }: LadderPicture): LadderRows {
  const lostCount = levels.reduce((sum, { lost }) => sum + lost.length, 0)
  const lostInWords = lostCount <= mostLostInWords
  const lostRows = lostCount === 0 ? 0 : lostInWords ? lostCount : 1
  let below = 30
  const lost = Array.from({ length: lostRows }, () => {
    below += rowOfLost
    return below - rowOfLost / 2 - 2
  })
  const middles = brackets.map(({ kind }) => {
    below += kind === 'range' ? rowOfRange : rowOfDifference
    return below - (kind === 'range' ? 16 : 4)
  })
  const windowAt = window === undefined ? undefined : below + (brackets.length > 0 ? 8 : 18)
  return { lost, lostInWords, brackets: middles, window: windowAt, height: (windowAt ?? below) + 12 }
}
