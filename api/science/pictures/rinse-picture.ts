export type RinsePoint = {
  /** Which rinse; 0 is the bath. */
  readonly at: number
  /** Tint left in the water, per cent of the bath; more than 0. */
  readonly share: number
}

/** How the rinse water cleared: measured against what pure dilution would do, on a logarithmic axis. */
export type RinsePicture = {
  readonly title: string
  readonly says: string
  readonly finding: string
  readonly measured: { readonly label: string; readonly points: readonly RinsePoint[] }
  readonly dilution: { readonly label: string; readonly points: readonly RinsePoint[] }
  /** From where on the eye calls it clear, per cent of the bath. */
  readonly clear?: { readonly at: number; readonly label: string }
  /** What the picture shows, said on it: “flatter than dilution: dye still leaves the fibre”. */
  readonly remark?: string
}
