import { type Frame, narrowBelow } from './frame.ts'
import type { LadderBracket, LadderLevel, LadderPicture } from './ladder-picture.ts'
import { ladderRows } from './ladder-scales.ts'
import { line, type Mark, type TextMark } from './marks.ts'
import { textWidth } from './text-width.ts'

/**
 * What stands under the axis of a ladder: the levels, the lost skeins, the brackets of each rule, the window.
 *
 * @example
 * const frame = { left: 0, top: 0, right: 100, bottom: 50, width: 500, x: (at) => at, y: (at) => 50 - at, textScale: 1 }
 * const level = { x: 35, label: '35 min', chosen: true, reference: false, lost: [] }
 * ladderFoot({ levels: [level], brackets: [] }, frame) // [{ words: '35 min', x: 35, tone: 'accent' }]
 */
export function ladderFoot(picture: LadderPicture, frame: Frame): Mark[] {
  const rows = ladderRows(picture)
  const at = (row: number): number => frame.bottom + row * frame.textScale
  return [
    ...windowStem(picture, frame, rows.window === undefined ? undefined : at(rows.window)),
    ...levelNames(picture, frame),
    ...lostLane(picture, frame, rows.lost.map(at), rows.lostInWords),
    ...picture.brackets.flatMap((bracket, index) =>
      bracketMarks(bracket, at(rows.brackets[index] ?? 0), frame),
    ),
    ...windowPin(picture, frame, rows.window === undefined ? undefined : at(rows.window)),
  ]
}

function levelNames({ levels }: LadderPicture, frame: Frame): Mark[] {
  const size = 15 * frame.textScale
  const named = (
    words: (level: LadderLevel) => string,
  ): { level: LadderLevel; words: string; from: number; to: number }[] =>
    levels.map((level) => {
      const half = textWidth(words(level), { size, strong: level.chosen }) / 2
      return {
        level,
        words: words(level),
        from: frame.x(level.x) - half - 5,
        to: frame.x(level.x) + half + 5,
      }
    })
  let names = named(({ label }) => label)
  const touching = names.some(({ from }, place) => from < (names[place - 1]?.to ?? Number.NEGATIVE_INFINITY))
  if (touching) names = named(({ label, short }) => short ?? label)

  // If even the short ones touch, the chosen level and the reference keep theirs; the table has them all.
  const kept: typeof names = []
  const weight = ({ chosen, reference }: LadderLevel): number => (chosen ? 2 : reference ? 1 : 0)
  for (const name of names.toSorted((one, other) => weight(other.level) - weight(one.level)))
    if (kept.every(({ from, to }) => name.to <= from || name.from >= to)) kept.push(name)

  return levels.flatMap((level): Mark[] => {
    const name = kept.find((it) => it.level === level)
    const x = frame.x(level.x)
    if (name === undefined) return [line(x, frame.bottom, x, frame.bottom + 5, { tone: 'ink', width: 1.5 })]
    const tone = level.chosen ? 'accent' : 'ink'
    return [
      {
        kind: 'text',
        x,
        y: frame.bottom + 27 * frame.textScale,
        words: name.words,
        size,
        tone,
        strong: level.chosen,
        anchor: 'middle',
        halo: 'wool',
      },
    ]
  })
}

function lostLane(
  { levels }: LadderPicture,
  frame: Frame,
  rows: readonly number[],
  inWords: boolean,
): Mark[] {
  const size = 15 * frame.textScale
  const lost = levels.flatMap((level) => level.lost.map((skein, place) => ({ level, skein, place })))
  const marks = lost.flatMap(({ level, skein, place }, index): Mark[] => {
    const y = rows[inWords ? index : 0] ?? frame.bottom
    const x = frame.x(level.x) + (inWords ? 0 : 13 * place)
    const ring: Mark[] = [
      { kind: 'dot', x, y, r: 5, tone: 'ink', fill: 'none', edge: 1.5, dash: [2.6, 2] },
      line(x - 3.5, y + 3.5, x + 3.5, y - 3.5, { tone: 'ink', width: 1.5 }),
    ]
    if (!inWords) return ring
    return [...ring, beside(`lost: ${skein.code}, ${skein.reason}`, { from: x, to: x }, y, size, frame)]
  })
  if (inWords || lost.length === 0) return marks
  const row = rows[0] ?? frame.bottom
  return [
    ...marks,
    {
      kind: 'text',
      x: 0,
      y: row + 0.33 * size,
      words: `lost: ${lost.length}`,
      size,
      tone: 'ink',
      halo: 'wool',
    },
  ]
}

function bracketMarks(bracket: LadderBracket, y: number, frame: Frame): Mark[] {
  const size = 15 * frame.textScale
  const [from, to] = [frame.x(bracket.from), frame.x(bracket.to)]
  const ends = { tone: 'ink', width: 2 } as const
  const words = isNarrow(frame) ? (bracket.short ?? bracket.label) : bracket.label
  const bars: Mark[] = [
    line(from, y, to, y, ends),
    line(from, y - 5, from, y + 5, ends),
    line(to, y - 5, to, y + 5, ends),
  ]
  if (bracket.kind === 'range') return [...bars, beside(words, { from, to }, y, size, frame)]
  return [...bars, onTop(words, { from, to }, y, size, frame)]
}

/** The stem goes first, so that the brackets and their words lie over it. */
function windowStem({ window }: LadderPicture, frame: Frame, y: number | undefined): Mark[] {
  if (window === undefined || y === undefined) return []
  const style = { tone: 'accent', width: 2 } as const
  const top = frame.bottom + 31 * frame.textScale
  const [from, to] = [frame.x(window.from), frame.x(window.to)]
  const stem = line(from, top, from, y, style)
  return from === to ? [stem] : [stem, line(to, top, to, y, style)]
}

function windowPin({ window }: LadderPicture, frame: Frame, y: number | undefined): Mark[] {
  if (window === undefined || y === undefined) return []
  const [from, to] = [frame.x(window.from), frame.x(window.to)]
  const pin = (x: number): Mark => ({ kind: 'dot', x, y, r: 5.5, tone: 'accent', fill: 'solid', edge: 0 })
  const bar =
    from === to ? [pin(from)] : [line(from, y, to, y, { tone: 'accent', width: 2.5 }), pin(from), pin(to)]
  const words = beside(window.label, { from, to }, y, 15 * frame.textScale, frame, true)
  return [...bar, { ...words, tone: 'accent' }]
}

/** Words to the right of something if there is room, else to its left, else on top of it. */
function beside(
  words: string,
  span: { from: number; to: number },
  y: number,
  size: number,
  frame: Frame,
  strong = false,
): TextMark {
  const width = textWidth(words, { size, strong })
  const text = { kind: 'text', y: y + 0.33 * size, words, size, tone: 'ink', halo: 'wool', strong } as const
  if (span.to + 12 + width <= frame.width) return { ...text, x: span.to + 12 }
  if (span.from - 12 - width >= 0) return { ...text, x: span.from - 12, anchor: 'end' }
  return { ...onTop(words, span, y, size, frame), strong }
}

function onTop(
  words: string,
  span: { from: number; to: number },
  y: number,
  size: number,
  frame: Frame,
): TextMark {
  const width = textWidth(words, { size })
  const fits = width <= span.to - span.from
  const wanted = fits ? span.from : (span.from + span.to - width) / 2
  const x = Math.max(0, Math.min(frame.width - width, wanted))
  // Words wider than their bracket stand clear of its end ticks.
  return { kind: 'text', x, y: y - (fits ? 6 : 9), words, size, tone: 'ink', halo: 'wool' }
}

function isNarrow(frame: Frame): boolean {
  return frame.width < narrowBelow * frame.textScale
}
