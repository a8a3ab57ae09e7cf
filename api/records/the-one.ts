/** The one of a list that was just written. */
export function theOne<T extends { readonly id: string }>(items: readonly T[], id: string): T {
  const found = items.find((it) => it.id === id)
  if (!found) throw new Error(`What was just written is not there: ${id}.`)
  return found
}
