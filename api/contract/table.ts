import { id, shortText } from './quantity.ts'
import { z } from './schema.ts'
import { wear } from './wear.ts'

/**
 * What a column of a pasted table means. One row is one piece, or one reading of it:
 * `when` says whether a value was read before or after the wear that was asked for once (`between`); `wear` names it
 * outright. `factor` is the key of the factor whose level the column gives.
 */
export const meanings = [
  'session',
  'place',
  'skein',
  'vessel',
  'lot',
  'card',
  'equipment',
  'item',
  'level',
  'base',
  'L',
  'a',
  'b',
  'outcome',
  'frame',
  'worn',
  'condition',
  'mass',
  'lost because',
  'ignore',
] as const

export const Column = z
  .object({
    heading: z.string().max(300),
    as: z.enum(meanings),
    /** `level`: the key of the factor. */
    factor: shortText.optional(),
    /** `L`, `a`, `b`, `outcome`: read before or after what lies `between`. */
    when: z.enum(['before', 'after']).optional(),
    wear: wear.optional(),
    /** `worn`: the axis along which the column counts, such as W2. */
    axis: shortText.optional(),
    /** `outcome`: its kind, and of which fibre the companion was. */
    kind: shortText.optional(),
    fibre: shortText.optional(),
    /** `outcome`: a category beside the number, such as the name of a zone. */
    text: shortText.optional(),
    /** `outcome`: of the piece itself, of the vessel it lay in, or of a part cut from it for this test. */
    of: z.enum(['skein', 'vessel', 'part']).optional(),
    /** `outcome` of a part: the level that this part was given (one part and one jar for each). */
    level: shortText.optional(),
    role: z.enum(['dark twin']).optional(),
    /** `condition`: the key of the table of variables. */
    key: shortText.optional(),
    unit: z.string().max(40).optional(),
  })
  .openapi('Column')
export type Column = z.infer<typeof Column>

type Cell = string | number | null
const isCell = (value: unknown): value is Cell =>
  typeof value === 'string' || typeof value === 'number' || value === null

/** Rows of cells, looked through by hand: a schema would gather a fault for each of a million wrong ones. */
const cells = z
  .array(z.unknown())
  .max(100_001)
  .transform((rows, context): Cell[][] => {
    for (const [i, row] of rows.entries()) {
      const wrong = Array.isArray(row) ? row.findIndex((value) => !isCell(value)) : undefined
      if (wrong === -1) continue
      context.addIssue(
        wrong === undefined
          ? { code: 'custom', path: [i], message: 'A row is a list of cells.' }
          : { code: 'custom', path: [i, wrong], message: 'A cell is text, a number or null.' },
      )
      return z.NEVER
    }
    return rows as Cell[][]
  })
  .openapi({
    type: 'array',
    maxItems: 100_001,
    items: { type: 'array', maxItems: 100, items: { type: ['string', 'number', 'null'], maxLength: 2000 } },
  })

export const NewTable = z
  .object({
    /** Names the import, so that a repeated POST is harmless and its progress can be asked for. */
    id: id.optional(),
    /** Pasted from a spreadsheet, or a CSV file: the first line holds the headings. */
    text: z.string().max(8_000_000).optional(),
    /** The same as cells; the first row holds the headings. */
    cells: cells.optional(),
    /** The column map; what is missing is guessed from the headings. */
    columns: z.array(Column).max(100).optional(),
    /** What lies between before and after, such as `{ "W2": 3 }`. */
    between: wear.optional(),
    /** Each piece had its own vessel; otherwise the pieces of one level in one session shared one. */
    ownVessel: z.boolean().optional(),
    /** Rows in which nothing was measured: why. “not done” leaves them planned. */
    blankRows: shortText.optional(),
    /** The vessel or batch that is the standard. */
    standard: shortText.optional(),
    /**
     * Rows that say another level than the one drawn for their place: the work was done in another order than drawn, and
     * they are kept as the table says; otherwise they are at fault.
     */
    otherOrder: z.boolean().optional(),
    /** `A-twin` is a part of `A`. */
    twinsAreParts: z.boolean().optional(),
    /** Values outside the usual that were looked at and kept: all of them, or these cells. */
    doubtsKept: z
      .union([z.boolean(), z.array(z.object({ row: z.number().int(), column: z.number().int() })).max(1000)])
      .optional(),
    /**
     * `all`: nothing is stored unless all of it is. `ready`, by explicit choice: the good rows alone; those at fault, and
     * those whose doubts were not kept, are left out and listed.
     */
    keep: z.enum(['all', 'ready']).default('all'),
    method: z.enum(['instrument', 'photo', 'eye']).optional(),
    instrumentId: id.optional(),
  })
  .openapi('NewTable')
export type NewTable = z.infer<typeof NewTable>

/** What one cell or row says that cannot be kept, or that should be looked at. */
export const CellFault = z
  .object({
    /** The row of the table, from 1, headings apart; and the line of the text that it stands on. */
    row: z.number().int(),
    line: z.number().int(),
    /** From 0; null when it is about the whole row. */
    column: z.number().int().nullable(),
    heading: z.string().nullable(),
    read: z.string(),
    title: z.string(),
    detail: z.string(),
    suggestion: z.string().nullable(),
  })
  .openapi('CellFault')
export type CellFault = z.infer<typeof CellFault>

export const Ask = z
  .object({
    key: z.enum(['between', 'ownVessel', 'otherOrder', 'blankRows', 'standard', 'twinsAreParts', 'columns']),
    question: z.string(),
    /** Nothing can be kept before this is answered. */
    needed: z.boolean(),
  })
  .openapi('Ask')
export type Ask = z.infer<typeof Ask>

export const TableCheck = z
  .object({
    rows: z.number().int(),
    /** Neither at fault nor to be confirmed: what `keep: ready` keeps. The three add up to `rows`. */
    ready: z.number().int(),
    atFault: z.number().int(),
    doubtful: z.number().int(),
    columns: z.array(Column),
    asks: z.array(Ask),
    faults: z.array(CellFault),
    /** How many faults there are in all; the list is cut at 200. */
    faultsInAll: z.number().int(),
    /** Those that were not kept yet; cut at 200. */
    doubts: z.array(CellFault),
    doubtsInAll: z.number().int(),
    notes: z.array(z.object({ title: z.string(), text: z.string() })),
    makes: z.object({
      sessions: z.number().int(),
      vessels: z.number().int(),
      skeins: z.number().int(),
      readings: z.number().int(),
      outcomes: z.number().int(),
      levels: z.array(z.object({ factor: z.string(), levels: z.array(z.string()), isNew: z.boolean() })),
    }),
  })
  .openapi('TableCheck')
export type TableCheck = z.infer<typeof TableCheck>

export const TableKept = z
  .object({
    importId: id,
    rows: z.number().int(),
    kept: z.number().int(),
    /** The rows that were left out by choice, each with its first fault. */
    leftOut: z.array(CellFault),
    makes: TableCheck.shape.makes,
    notes: TableCheck.shape.notes,
  })
  .openapi('TableKept')
export type TableKept = z.infer<typeof TableKept>

export const TableProgress = z
  .object({ stage: z.string(), done: z.number().int(), of: z.number().int(), ended: z.boolean() })
  .openapi('TableProgress')
export type TableProgress = z.infer<typeof TableProgress>
