import { overlap } from '#api/science/pictures/clearest-place.ts'
import type { Box, Mark, TextMark } from '#api/science/pictures/marks.ts'
import { textWidth } from '#api/science/pictures/text-width.ts'

/** Every word of a picture, with the box that its letters fill. */
export function boxesOfText(marks: readonly Mark[]): { words: string; box: Box }[] {
  return marks
    .filter((mark): mark is TextMark => mark.kind === 'text')
    .map((mark) => ({ words: mark.words, box: boxOf(mark) }))
}

function boxOf({ x, y, words, size, anchor = 'start', strong = false }: TextMark): Box {
  const width = textWidth(words, { size, strong })
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, top: y - 0.7 * size, width, height: 0.72 * size }
}

/** The pairs of words that touch. */
export function touching(marks: readonly Mark[]): string[] {
  const all = boxesOfText(marks)
  return all.flatMap((one, place) =>
    all
      .slice(place + 1)
      .flatMap((other) => (overlap(one.box, other.box) > 0.5 ? [`${one.words} × ${other.words}`] : [])),
  )
}

/** The words that leave a drawing of this width. */
export function outside(marks: readonly Mark[], width: number): string[] {
  return boxesOfText(marks)
    .filter(({ box }) => box.left < -0.5 || box.left + box.width > width + 0.5)
    .map(({ words }) => words)
}
