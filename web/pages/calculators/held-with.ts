import type { Trial } from '#api/contract/trial.ts'

export type Held = Trial['held'][number]

/** What a calculator gives a trial to hold the same, in words. */
export type Holding = { readonly key: string; readonly value: string }

/**
 * What a trial holds the same, with new values in the place of those of the same name.
 *
 * @example
 * heldWith([{ key: 'Depth', value: '2 %' }], [{ key: 'depth', value: '1 %' }]) // [{ key: 'Depth', value: '1 %' }]
 */
export function heldWith(held: readonly Held[], values: readonly Holding[]): Held[] {
  const named = (key: string) => (it: { readonly key: string }) => it.key.toLowerCase() === key.toLowerCase()
  const changed = held.map((it) => {
    const value = values.find(named(it.key))
    return value === undefined ? it : { ...it, value: value.value }
  })
  const added = values.filter(({ key }) => !held.some(named(key)))
  return [...changed, ...added.map(({ key, value }) => ({ key, value }))]
}
