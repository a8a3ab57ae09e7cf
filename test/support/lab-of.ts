import type { Lab } from '#api/science/colour/lab.ts'

/** A colour from the list of three that the reference files use. */
export function labOf(values: readonly number[]): Lab {
  const [L, a, b] = values
  if (L === undefined || a === undefined || b === undefined || values.length !== 3)
    throw new RangeError('A colour in a reference file has three numbers.')
  return { L, a, b }
}
