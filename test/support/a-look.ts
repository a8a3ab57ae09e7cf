import type { Look } from '#web/charts/look.ts'

/** The look of a page in light, at this width. */
export function lookOf(width: number, more: Partial<Look> = {}): Look {
  const tones = {
    ink: '#24221e',
    soft: '#57534a',
    line: '#827d72',
    hair: '#d3d0c7',
    accent: '#5a2d6e',
    wool: '#f2f1ec',
    grey: '#ababab',
    'grey-ink': '#24221e',
  }
  return { tones, family: 'serif', width, textScale: 1, ...more }
}
