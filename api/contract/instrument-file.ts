import { id, shortText } from './quantity.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

/** A file as an instrument wrote it, and what the file itself cannot say: the sitting and the wear. */
export const NewInstrumentFile = z
  .object({
    /** CGATS.17 text, or a table with a head line: L*a*b* or reflectance by wavelength, by SAMPLE_ID. */
    text: z.string().max(2_000_000),
    /** Into a sitting that is there, or a new one of this name. */
    sittingId: id.optional(),
    label: shortText.optional(),
    instrumentId: id.optional(),
    wear: wear.optional(),
  })
  .openapi('NewInstrumentFile')
export type NewInstrumentFile = z.infer<typeof NewInstrumentFile>

export const InstrumentFileCheck = z
  .object({
    /** One reading for each skein; rows of one SAMPLE_ID are its spots. */
    readings: z.number().int(),
    spots: z.number().int(),
    from: z.enum(['spectrum', 'lab', 'nothing']),
    keywords: z.record(z.string(), z.string()),
    faults: z.array(z.object({ line: z.number().int(), reason: z.string() })),
    notes: z.array(z.string()),
  })
  .openapi('InstrumentFileCheck')
export type InstrumentFileCheck = z.infer<typeof InstrumentFileCheck>

export const InstrumentFileKept = InstrumentFileCheck.omit({ faults: true })
  .extend({ sittingId: id })
  .openapi('InstrumentFileKept')
export type InstrumentFileKept = z.infer<typeof InstrumentFileKept>
