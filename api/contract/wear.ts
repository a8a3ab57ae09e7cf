import { z } from './schema.ts'
import { type Wear, wearAxisNames } from './wear-words.ts'

// Words and keys stand apart, so that the pages can have them without the schemas.
export { type Wear, type WearAxis, wearAxes, wearInWords, wearKey } from './wear-words.ts'

/** A wear as it travels: known axes, amounts above zero. */
export const wear = z
  .partialRecord(z.enum(wearAxisNames), z.number().gt(0).max(10_000))
  .transform((map) => map as Wear)
  .openapi('Wear', { type: 'object', additionalProperties: { type: 'number' }, example: { W2: 3 } })
