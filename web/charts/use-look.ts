import type { RefObject } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'
import { type Look, lookAt } from '#web/charts/look.ts'

const changesOfLook = ['(prefers-color-scheme: dark)', '(forced-colors: active)', 'print']

/** The look of the page at an element, kept up to date: its width, the colour scheme, paper. Undefined until it stands. */
export function useLook(element: RefObject<HTMLElement | null>): Look | undefined {
  const [look, setLook] = useState<Look | undefined>()
  useLayoutEffect(() => {
    const place = element.current
    if (place === null) return undefined
    const see = (): void => {
      if (place.clientWidth > 0) setLook((seen) => newer(seen, lookAt(place)))
    }
    const watch = new ResizeObserver(see)
    watch.observe(place)
    const queries = changesOfLook.map((query) => matchMedia(query))
    for (const query of queries) query.addEventListener('change', see)
    see()
    return () => {
      watch.disconnect()
      for (const query of queries) query.removeEventListener('change', see)
    }
  }, [element])
  return look
}

/** The look seen before when nothing has changed, so that nothing is drawn anew. */
function newer(seen: Look | undefined, now: Look): Look {
  return seen !== undefined && JSON.stringify(seen) === JSON.stringify(now) ? seen : now
}
