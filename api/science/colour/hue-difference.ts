/**
 * The signed hue difference ΔH* between two points of a chroma plane: positive when the second lies anticlockwise
 * of the first (red → yellow → green → blue). Points straight opposite count as positive; a grey has no hue, so 0.
 *
 * The usual √(ΔE² − ΔL² − ΔC²) loses every digit when the hues are close. The half-angle form does not:
 * 2·√(C₁C₂)·sin(Δh/2) = cross ÷ √((C₁C₂ + dot) ÷ 2). It is used on the near side, the other on the far side.
 *
 * @example
 * hueDifference(3, 4, 4, 3) // -1.414214
 * @example
 * hueDifference(6, 0, -6, 0) // 12
 */
export function hueDifference(a1: number, b1: number, a2: number, b2: number): number {
  const product = Math.sqrt((a1 * a1 + b1 * b1) * (a2 * a2 + b2 * b2))
  const dot = a1 * a2 + b1 * b2
  const cross = a1 * b2 - a2 * b1
  if (dot > 0) return cross / Math.sqrt((product + dot) / 2)
  const size = Math.sqrt(2 * Math.max(0, product - dot))
  return cross < 0 ? -size : size
}
