/** The cells of an instrument's file, each row with its line number in the text, from 1. */
export type InstrumentTable = {
  readonly columns: readonly string[]
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[]
  /** What the file says of itself before the data, keyword in capitals. */
  readonly keywords: Readonly<Record<string, string>>
  readonly faults: readonly InstrumentFault[]
}

/** A line that could not be read, and why. */
export type InstrumentFault = { readonly line: number; readonly reason: string }
