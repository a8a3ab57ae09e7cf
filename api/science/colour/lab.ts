/** A colour as CIE L*a*b*: lightness 0–100, a* from green to red, b* from blue to yellow. D65/10° unless said. */
export type Lab = { readonly L: number; readonly a: number; readonly b: number }

/**
 * How strong a colour is: its distance from grey, C*ab.
 *
 * @example
 * chroma({ L: 50, a: 3, b: -4 }) // 5
 */
export function chroma(lab: Lab): number {
  return Math.sqrt(lab.a * lab.a + lab.b * lab.b)
}

/**
 * Where on the colour circle: hab in degrees from 0 up to but not including 360 (0 red, 90 yellow, 180 green,
 * 270 blue). A grey has no hue; it is given 0, as in the published test data of CIEDE2000.
 *
 * @example
 * hue({ L: 50, a: 0, b: -4 }) // 270
 */
export function hue(lab: Lab): number {
  return hueOf(lab.a, lab.b)
}

/**
 * The same from a* and b* alone; −0 counts as 0, so that a grey is 0 and never 180.
 *
 * @example
 * [hueOf(0, 4), hueOf(-0, 0)] // [90, 0]
 */
export function hueOf(a: number, b: number): number {
  if (a === 0 && b === 0) return 0
  const degrees = (Math.atan2(b, a) * 180) / Math.PI
  if (degrees >= 0) return degrees + 0
  // A hue a hair below zero would round up to 360, which is 0.
  const turned = degrees + 360
  return turned < 360 ? turned : 0
}
