import type { Doubt, Sent } from '#api/contract/one-or-many.ts'

/** The reply to a POST of one or many: what is kept, in the order sent, with the doubts about what was sent. */
export function keptAs<Row, Shown extends object>(
  { many }: Pick<Sent<object>, 'many'>,
  { rows, doubts = [] }: { rows: readonly Row[]; doubts?: Doubt[] | undefined },
  present: (row: Row) => Shown,
): { items: Shown[]; doubts: Doubt[] } | (Shown & { doubts: Doubt[] }) {
  const items = rows.map(present)
  const [first] = items
  if (many || first === undefined) return { items, doubts }
  return { ...first, doubts }
}
