import {
  decimal,
  id,
  maybeDay,
  maybeDecimal,
  maybeId,
  maybeMoment,
  maybeText,
  shortText,
} from './quantity.ts'
import { z } from './schema.ts'

/** How a column is kept: JSON goes in as text and a moment comes out as a Date; anything else is what it is. */
export type KeptAs = 'plain' | 'moment' | 'json' | 'conditions'

/** One column of a record: how it is sent and changed (undefined: never), how it is shown, how it is kept. */
export type Column = {
  readonly sent?: z.ZodType
  readonly changed?: z.ZodType
  readonly shown: z.ZodType
  readonly kept: KeptAs
}

/** The columns of a noun, in the order in which a reply shows them. */
export type Columns = Readonly<Record<string, Column>>

type Bounds = Parameters<typeof decimal>[0]
type Words = readonly [string, ...string[]]

const plain = <Sent extends z.ZodType, Shown extends z.ZodType>(sent: Sent, shown: Shown) =>
  ({ sent, changed: sent, shown, kept: 'plain' }) as const

/** Conditions are checked against their bounds where they are written. */
const sentConditions = z.record(z.string().min(1).max(200), z.unknown())

/** The kinds of column, each with how it is sent, changed, shown and kept. */
export const column = {
  /** Text of a line that must be there. */
  name: () => plain(shortText, z.string()),
  /** Text that may be missing. */
  text: () => plain(maybeText, z.string().nullable()),
  /** Text of so many characters that may be missing. */
  shortText: (most: number) =>
    plain(
      z
        .string()
        .trim()
        .max(most)
        .nullish()
        .transform((text) => text || null),
      z.string().nullable(),
    ),
  number: (bounds: Bounds) => plain(decimal(bounds), z.number()),
  maybeNumber: (bounds: Bounds) => plain(maybeDecimal(bounds), z.number().nullable()),
  /** One of these words. */
  choice: <const W extends Words>(words: W) => plain(z.enum(words), z.enum(words)),
  /** One of these words; the one that is named when none is sent. */
  choiceOr: <const W extends Words>(words: W, usual: W[number]) => {
    const choice = z.enum(words)
    return { sent: choice.default(usual), changed: choice, shown: choice, kept: 'plain' } as const
  },
  /** Yes or no; no when nothing is sent. */
  flag: () =>
    ({ sent: z.boolean().default(false), changed: z.boolean(), shown: z.boolean(), kept: 'plain' }) as const,
  /** The id of another record. */
  reference: () => plain(id, id),
  maybeReference: () => plain(maybeId, id.nullable()),
  day: () => plain(maybeDay, z.string().nullable()),
  moment: () =>
    ({ sent: maybeMoment, changed: maybeMoment, shown: z.string().nullable(), kept: 'moment' }) as const,
  conditions: () =>
    ({
      sent: sentConditions.default({}),
      changed: sentConditions,
      shown: z.record(z.string(), z.unknown()),
      kept: 'conditions',
    }) as const,
  /** Worked out or set by us, and never sent. */
  ours: <Shown extends z.ZodType, Kept extends KeptAs>(shown: Shown, kept: Kept) =>
    ({ shown, kept }) as const,
}

/** A column that is sent once and not changed after. */
export function unchanging<Sent extends z.ZodType, Shown extends z.ZodType, Kept extends KeptAs>({
  sent,
  shown,
  kept,
}: {
  readonly sent: Sent
  readonly shown: Shown
  readonly kept: Kept
}) {
  return { sent, shown, kept } as const
}
