/** What unchanged skeins show when they are read alike, and how well that is known. In ΔE00. */
export type Noise = {
  readonly kind: 'twins' | 'instrument' | 'planning'
  /** Root mean square ΔE00 of unchanged skeins read alike. */
  readonly rms: number
  /** Its one-sided 80 % upper limit: what decides. */
  readonly upperRms: number
  /** Degrees of freedom; undefined where it is not known of how many it comes (a planning value, an entered one). */
  readonly df: number | undefined
  /** Mean ΔE00 of unchanged skeins: 0.92 × rms. */
  readonly floor: number
  /** Where it comes from, as it stands in a sentence: “the dark twin of this trial, read again 4 times”. */
  readonly from: string
  /** Re-readings or repeats behind it; 0 for a planning value. */
  readonly n: number
}
