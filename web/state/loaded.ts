import { useCallback, useEffect, useState } from 'preact/hooks'
import { timesSignedIn } from '#web/state/signing-in.ts'

/** What a page knows of something it asked for. */
export type Loaded<T> =
  | { readonly kind: 'reading'; readonly again: () => void }
  | { readonly kind: 'here'; readonly value: T; readonly again: () => void }
  | { readonly kind: 'refused'; readonly refused: unknown; readonly again: () => void }

type Seen<T> = {
  readonly key: string
  readonly state: 'here' | 'refused'
  readonly value?: T
  readonly refused?: unknown
}

/**
 * Loads something when the page opens and whenever `key` changes. Asking again keeps what is shown until the new answer
 * is in. `const trial = useLoaded(id, (signal) => ask<Trial>(`/api/trials/${id}`, { signal }))`
 *
 * @param key Says what is loaded: a new key throws the old answer away.
 */
export function useLoaded<T>(key: string, load: (signal: AbortSignal) => Promise<T>): Loaded<T> {
  const [seen, setSeen] = useState<Seen<T> | undefined>()
  const [asked, setAsked] = useState(0)
  const again = useCallback(() => setAsked((times) => times + 1), [])

  // `load` is written in place and new each time; `key` alone says when to load.
  useEffect(() => {
    const leaving = new AbortController()
    load(leaving.signal).then(
      (value) => {
        if (!leaving.signal.aborted) setSeen({ key, state: 'here', value })
      },
      (refused: unknown) => {
        if (!leaving.signal.aborted) setSeen({ key, state: 'refused', refused })
      },
    )
    return () => leaving.abort()
  }, [key, asked, timesSignedIn.value])

  if (seen === undefined || seen.key !== key) return { kind: 'reading', again }
  if (seen.state === 'refused') return { kind: 'refused', refused: seen.refused, again }
  return { kind: 'here', value: seen.value as T, again }
}
