import { type Box, hatchLines, type Mark, type Point, type Tone } from './marks.ts'

export type SvgOptions = {
  readonly width: number
  readonly height: number
  /** What the picture shows, as a sentence: its name for those who do not see it. */
  readonly finding: string
  /** The value of every tone: a colour, or `var(--ink)` inside a page. */
  readonly tones: Readonly<Record<Tone, string>>
  readonly family: string
  /** Sets the names of its gradients apart from those of other pictures in the same page. */
  readonly id?: string
}

/**
 * Marks as an SVG picture, complete, with its name. Words and colours from outside are escaped.
 *
 * @example
 * const tones = { ink: '#24221e' }
 * const dot = { kind: 'dot', x: 5, y: 5, r: 4, tone: 'ink', fill: 'solid', edge: 0 }
 * svgOfMarks([dot], { width: 10, height: 10, finding: 'One skein', tones, family: 'serif' }).endsWith('fill="#24221e"/></svg>') // true
 */
export function svgOfMarks(
  marks: readonly Mark[],
  { width, height, finding, tones, family, id = 'p' }: SvgOptions,
): string {
  const inside = marks.map((mark, place) => svgOfMark(mark, tones, `${id}-${place}`)).join('')
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${round(width)} ${round(height)}" width="${round(width)}" ` +
    `height="${round(height)}" role="img" aria-label="${escaped(finding)}" font-family="${escaped(family)}" font-weight="500">${inside}</svg>`
  )
}

/**
 * One mark as SVG. `id` names its gradient, if it has one.
 *
 * @example
 * svgOfMark({ kind: 'dot', x: 5, y: 5, r: 4, tone: 'ink', fill: 'none', edge: 0 }, {}, 'a') // '<circle cx="5" cy="5" r="4" fill="none"/>'
 */
export function svgOfMark(mark: Mark, tones: Readonly<Record<Tone, string>>, id: string): string {
  switch (mark.kind) {
    case 'line': {
      const dash = mark.dash === undefined ? '' : ` stroke-dasharray="${mark.dash.join(' ')}"`
      const cap = mark.round === true ? ' stroke-linecap="round"' : ''
      const opacity = mark.opacity === undefined ? '' : ` stroke-opacity="${mark.opacity}"`
      return `<polyline points="${pairs(mark.points)}" fill="none" stroke="${tones[mark.tone]}" stroke-width="${mark.width}"${dash}${cap}${opacity}/>`
    }
    case 'dot': {
      const tone = tones[mark.tone]
      const fill = mark.fill === 'none' ? 'none' : tone
      const light = mark.fill === 'light' ? ' fill-opacity="0.22"' : ''
      const dash = mark.dash === undefined ? '' : ` stroke-dasharray="${mark.dash.join(' ')}"`
      const edge = mark.edge > 0 ? ` stroke="${tone}" stroke-width="${mark.edge}"${dash}` : ''
      return `<circle cx="${round(mark.x)}" cy="${round(mark.y)}" r="${mark.r}" fill="${fill}"${light}${edge}/>`
    }
    case 'text': {
      const anchor = mark.anchor === undefined ? '' : ` text-anchor="${mark.anchor}"`
      const weight = mark.strong === true ? ' font-weight="700"' : ''
      const halo =
        mark.halo === undefined
          ? ''
          : ` stroke="${tones[mark.halo]}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"`
      return `<text x="${round(mark.x)}" y="${round(mark.y)}" font-size="${round(mark.size)}" fill="${tones[mark.tone]}"${weight}${anchor}${halo}>${escaped(mark.words)}</text>`
    }
    case 'box': {
      const fill = mark.fill === undefined ? 'none' : colourOf(mark.fill, tones)
      const edge =
        mark.tone === undefined ? '' : ` stroke="${tones[mark.tone]}" stroke-width="${mark.edge ?? 1}"`
      const corners = mark.round === undefined ? '' : ` rx="${mark.round}"`
      return `<rect ${boxOf(mark)} fill="${fill}"${edge}${corners}/>`
    }
    case 'hatch': {
      const path = hatchLines(mark).map(([from, to]) => `M${at(from)}L${at(to)}`)
      const tone = tones.line
      return `<rect ${boxOf(mark)} fill="${tone}" fill-opacity="0.14"/><path d="${path.join('')}" stroke="${tone}" stroke-opacity="0.5" fill="none"/>`
    }
    case 'shape': {
      const { from, to } = mark.fill
      const gradient =
        `<linearGradient id="${id}" gradientUnits="userSpaceOnUse" x1="${round(from.x)}" y1="${round(from.y)}" x2="${round(to.x)}" y2="${round(to.y)}">` +
        `<stop offset="0" stop-color="${escaped(from.colour)}"/><stop offset="1" stop-color="${escaped(to.colour)}"/></linearGradient>`
      return `${gradient}<polygon points="${pairs(mark.points)}" fill="url(#${id})" stroke="${tones[mark.tone]}" stroke-width="${mark.edge}" stroke-linejoin="round"/>`
    }
  }
}

/**
 * Words made safe to stand in SVG or HTML.
 *
 * @example
 * escaped('a < "b"') // 'a &lt; &quot;b&quot;'
 */
export function escaped(words: string): string {
  return words.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')
}

function colourOf(fill: Tone | `#${string}`, tones: Readonly<Record<Tone, string>>): string {
  return fill.startsWith('#') ? escaped(fill) : tones[fill as Tone]
}

function pairs(points: readonly Point[]): string {
  return points.map(at).join(' ')
}

function at({ x, y }: Point): string {
  return `${round(x)},${round(y)}`
}

function boxOf({ left, top, width, height }: Box): string {
  return `x="${round(left)}" y="${round(top)}" width="${round(Math.max(0, width))}" height="${round(Math.max(0, height))}"`
}

function round(value: number): number {
  return Math.round(value * 100) / 100
}
