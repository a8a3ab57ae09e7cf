/** The plot inside a drawing, in pixels, and how values come to stand in it. */
export type Frame = {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  /** The width of the whole drawing. */
  readonly width: number
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  /** 1 at the usual text size, 2 when the reader has doubled it. */
  readonly textScale: number
}

/** Below this width a picture is drawn as on a phone. */
export const narrowBelow = 430

/**
 * A straight scale from values to pixels.
 *
 * @example
 * straight({ from: 0, to: 12 }, { from: 300, to: 0 })(3) // 225
 */
export function straight(
  values: { readonly from: number; readonly to: number },
  pixels: { readonly from: number; readonly to: number },
): (value: number) => number {
  const span = values.to - values.from || 1
  return (value) => pixels.from + ((value - values.from) * (pixels.to - pixels.from)) / span
}

/**
 * A figure as pictures write it: rounded, with a true minus.
 *
 * @example
 * pictureFigure(-0.46, 1) // '−0.5'
 */
export function pictureFigure(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}
