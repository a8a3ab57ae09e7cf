/**
 * The two sides of a distribution at one point: the probability of at most this much, and of more than this
 * much. Both are worked out directly, so that the small one keeps its digits; neither is one minus the other
 * where it is the small one.
 */
export type Tails = { readonly lower: number; readonly upper: number }
