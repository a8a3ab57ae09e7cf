/** A part that has no answer, with the reason in one plain sentence. */
export type Unavailable = { readonly unavailable: string }

/** Said where a number went beyond what a number can hold. */
export const tooLarge: Unavailable = {
  unavailable: 'These numbers are too large, or too near one another, to be worked with.',
}

/**
 * Whether a part is one without answer.
 *
 * @example
 * isUnavailable({ unavailable: 'One group alone has nothing to be compared with.' }) // true
 */
export function isUnavailable(part: unknown): part is Unavailable {
  return typeof part === 'object' && part !== null && 'unavailable' in part
}

/**
 * The answer, or that there is none where one of its numbers went beyond what a number can hold.
 *
 * @example
 * ifFinite({ F: Number.POSITIVE_INFINITY, p: 0 }) // { unavailable: 'These numbers are too large, or too near one another, to be worked with.' }
 */
export function ifFinite<Answer extends object>(answer: Answer): Answer | Unavailable {
  const finite = Object.values(answer).every((it) => typeof it !== 'number' || Number.isFinite(it))
  return finite ? answer : tooLarge
}
