import type { ChartConfiguration } from 'chart.js'
import type { Tone } from '#api/science/pictures/marks.ts'

/** What a picture must know of the page it is drawn on. */
export type Look = {
  /** The colour of each tone as the page has it now: light, dark, paper or the reader’s own. */
  readonly tones: Readonly<Record<Tone, string>>
  readonly family: string
  readonly width: number
  /** 1 at the usual text size, 2 when the reader has doubled it. */
  readonly textScale: number
}

/** A point of a chart, with what is said of it on pointing or tapping. */
export type ToldPoint = { readonly x: number; readonly y: number; readonly told?: string }

export type PictureConfiguration = ChartConfiguration<'scatter', ToldPoint[]>

/** A chart that is ready to be drawn, and how high it wants to be. */
export type Drawing = { readonly height: number; readonly configuration: PictureConfiguration }

const tones: readonly Tone[] = ['ink', 'soft', 'line', 'hair', 'accent', 'wool', 'grey', 'grey-ink']

/** Reads the look of the page at an element. Needs a browser. */
export function lookAt(element: HTMLElement): Look {
  const style = getComputedStyle(element)
  const rootSize = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  const toneOf = (tone: Tone): string => style.getPropertyValue(`--${tone}`).trim()
  return {
    tones: Object.fromEntries(tones.map((tone) => [tone, toneOf(tone)])) as Record<Tone, string>,
    family: style.fontFamily,
    width: element.clientWidth,
    textScale: rootSize / 16,
  }
}

/**
 * A tone thinned out, for the light fill of a skein’s dot. A system colour cannot be thinned, and is left out.
 *
 * @example
 * thinned('#24221e', 0.22) // '#24221e38'
 */
export function thinned(colour: string, share: number): string {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) return 'transparent'
  return (
    colour +
    Math.round(share * 255)
      .toString(16)
      .padStart(2, '0')
  )
}
