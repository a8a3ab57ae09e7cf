import type { ComponentType, FunctionComponent } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Reading } from '#web/parts/reading.tsx'

/**
 * A part of a page that is loaded when it is first shown; what stands around it stays.
 * `const PlanPart = later(async () => (await import('#web/pages/trial/plan-part.tsx')).PlanPart)`
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): FunctionComponent<Props> {
  let Known: ComponentType<Props> | undefined
  return function Later(props: Props) {
    const [broken, setBroken] = useState<Error | undefined>()
    const [, setSeen] = useState(Known !== undefined)
    useEffect(() => {
      if (Known !== undefined) return
      load().then(
        (component) => {
          Known = component
          setSeen(true)
        },
        (error: Error) => setBroken(error),
      )
    }, [])
    // Thrown while drawing, so that the page says “Something broke here” as it does for a page.
    if (broken !== undefined) throw broken
    return Known === undefined ? <Reading /> : <Known {...props} />
  }
}
