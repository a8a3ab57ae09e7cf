import type { Columns } from './columns.ts'
import { corrected, correcting } from './one-or-many.ts'
import { id, stored } from './quantity.ts'
import { z } from './schema.ts'

type SentOf<C extends Columns> = {
  [Key in keyof C as C[Key] extends { sent: z.ZodType } ? Key : never]: C[Key] extends { sent: infer S }
    ? S
    : never
}
type ChangedOf<C extends Columns> = {
  [Key in keyof C as C[Key] extends { changed: z.ZodType } ? Key : never]: C[Key] extends { changed: infer S }
    ? S
    : never
}
type ShownOf<C extends Columns> = { [Key in keyof C]: C[Key]['shown'] }

/** Picks one side of every column that has it. */
function sideOf<Shape extends object>(columns: Columns, side: 'sent' | 'changed' | 'shown'): Shape {
  const shape = {} as Shape
  for (const [key, column] of Object.entries(columns)) {
    const schema = column[side]
    if (schema) Object.assign(shape, { [key]: schema })
  }
  return shape
}

/**
 * The schemas of a plain record, from its columns: what a POST takes, what a PATCH takes, what a reply shows. Their
 * names in the OpenAPI document are those of the noun: `NewSkein`, `ChangedSkein`, `Skein`.
 */
export function plainRecord<const C extends Columns>(name: string, columns: C) {
  return {
    columns,
    sent: z.object({ id: id.optional(), ...sideOf<SentOf<C>>(columns, 'sent') }).openapi(`New${name}`),
    changed: z.object(sideOf<ChangedOf<C>>(columns, 'changed')).partial().openapi(`Changed${name}`),
    shown: z.object({ ...stored, ...sideOf<ShownOf<C>>(columns, 'shown') }).openapi(name),
  }
}

/** The schemas of a measured record, which is never changed: a later one supersedes it, and says why. */
export function measuredRecord<const C extends Columns>(name: string, columns: C) {
  return {
    columns,
    sent: z
      .object({ id: id.optional(), ...sideOf<SentOf<C>>(columns, 'sent'), ...correcting })
      .openapi(`New${name}`),
    shown: z.object({ ...stored, ...sideOf<ShownOf<C>>(columns, 'shown'), ...corrected }).openapi(name),
  }
}
