/**
 * The floor of the measuring error (mean ΔE00 of unchanged skeins) against the margin: above a third of it an error that is
 * little known settles nothing, above half of it nothing can hold. Simulated: beyond a half false answers come in 7 to 24 of 100.
 */
export const noiseShares = { caution: 1 / 3, blind: 1 / 2 } as const
