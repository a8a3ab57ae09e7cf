import { useId, useMemo } from 'preact/hooks'
import type { Mark, Tone } from '#api/science/pictures/marks.ts'
import { svgOfMark } from '#api/science/pictures/svg-of-marks.ts'

const tones: Readonly<Record<Tone, string>> = {
  ink: 'var(--ink)',
  soft: 'var(--soft)',
  line: 'var(--line)',
  hair: 'var(--hair)',
  accent: 'var(--accent)',
  wool: 'var(--wool)',
  grey: 'var(--grey)',
  'grey-ink': 'var(--grey-ink)',
}

export type MarksPictureProps = {
  readonly marks: readonly Mark[]
  readonly width: number
  readonly height: number
  /** What it shows, as a sentence. */
  readonly finding: string
}

/** Marks as an SVG picture that follows the page’s colours by itself. Yarn keeps its own with forced colours. */
export function MarksPicture({ marks, width, height, finding }: MarksPictureProps) {
  const id = useId()
  const inside = useMemo(
    () => marks.map((mark, place) => svgOfMark(mark, tones, `${id}-${place}`)).join(''),
    [marks, id],
  )
  return (
    <svg
      class="picture-svg"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={finding}
      // Our own marks, every word and colour of them escaped by `svgOfMark`.
      dangerouslySetInnerHTML={{ __html: inside }}
    />
  )
}
