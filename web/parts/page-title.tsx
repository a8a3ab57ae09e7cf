import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { useLocation } from 'preact-iso'

/** The address that was opened first; the browser looks after that one itself. */
let arrivedAt: string | undefined

/**
 * The one h1 of a page. It names the window too, and takes the focus when the page changes, so that a screen reader
 * says where one is. `<PageTitle>Calculators</PageTitle>`; with markup inside, give the words as `name`.
 */
export function PageTitle({
  name,
  children,
}: {
  readonly name?: string
  readonly children: ComponentChildren
}) {
  const heading = useRef<HTMLHeadingElement>(null)
  const { path } = useLocation()

  useEffect(() => {
    const words = name ?? heading.current?.textContent ?? ''
    document.title = words === '' || words === 'Runs Clear' ? 'Runs Clear' : `${words} · Runs Clear`
  })
  useEffect(() => {
    const first = arrivedAt === undefined || arrivedAt === path
    if (arrivedAt === undefined) arrivedAt = path
    if (!first) {
      arrivedAt = ''
      heading.current?.focus({ preventScroll: true })
    }
  }, [path])

  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  )
}
