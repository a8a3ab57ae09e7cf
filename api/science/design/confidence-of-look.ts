/**
 * The confidence of a look: each later one has half the doubt of the one before, so that all looks together never have
 * more than twice the doubt of one.
 *
 * @param confidence  One-sided, of the first look.
 * @param look        From 1.
 *
 * @example
 * [confidenceOfLook(0.95, 1), confidenceOfLook(0.95, 2)] // [0.95, 0.975]
 */
export function confidenceOfLook(confidence: number, look: number): number {
  return 1 - (1 - confidence) / 2 ** (look - 1)
}
