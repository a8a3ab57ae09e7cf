import './site-header.css'
import { useEffect, useRef, useState } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { Mark } from '#web/parts/mark.tsx'
import type { Place } from '#web/places.ts'

/** The bar at the top: the mark, the name and the places. On a phone the places stand behind the word “Menu”. */
export function SiteHeader({ places }: { readonly places: readonly Place[] }) {
  const { path } = useLocation()
  const [open, setOpen] = useState(false)
  const menu = useRef<HTMLButtonElement>(null)
  // The menu closes whenever the page changes.
  useEffect(() => setOpen(false), [path])

  return (
    <header class="site-header page">
      <div class="site-header-bar">
        <a class="site-header-name" href="/" aria-label="Runs Clear, home">
          <Mark />
          Runs Clear
        </a>
        <button
          ref={menu}
          type="button"
          class="site-header-menu"
          aria-expanded={open}
          aria-controls="places"
          onClick={() => setOpen(!open)}
        >
          Menu
        </button>
        <nav
          id="places"
          class="site-header-places"
          data-open={open}
          aria-label="Places"
          onKeyDown={(event) => {
            if (event.key !== 'Escape' || !open) return
            setOpen(false)
            menu.current?.focus()
          }}
        >
          <ul class="plain-list">
            {places.map(({ path: place, label }) =>
              label === undefined ? null : (
                <li key={place}>
                  <a href={place} aria-current={isCurrent(place, path) ? 'page' : undefined}>
                    {label}
                  </a>
                </li>
              ),
            )}
          </ul>
        </nav>
      </div>
    </header>
  )
}

/**
 * Whether a place of the bar is where the reader is: the place itself or something below it.
 *
 * @example
 * isCurrent('/calculators', '/calculators/acid') // true
 */
export function isCurrent(place: string, path: string): boolean {
  return path === place || (place !== '/' && path.startsWith(`${place}/`))
}
