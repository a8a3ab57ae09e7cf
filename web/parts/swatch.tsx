import './swatch.css'
import type { Lab } from '#api/science/colour/lab.ts'
import { isBeyondScreen, yarnBackground } from '#web/parts/yarn.ts'

export type SwatchProps = {
  /** One colour, or several beside each other, as a ladder in a list of trials. */
  readonly colours: readonly Lab[]
  /** `chip` 18 × 14 beside a name, `small` in tables, `list` 104 × 48, `band` as wide as its place. */
  readonly size?: 'chip' | 'small' | 'list' | 'band'
}

/** Yarn on its own grey. It says nothing by itself: words or figures stand beside it. `<Swatch colours={[before, after]} size="small" />` */
export function Swatch({ colours, size = 'list' }: SwatchProps) {
  if (colours.length === 0) return <span class={`swatch swatch-${size} swatch-unread`} aria-hidden="true" />
  return (
    <span class={`swatch swatch-${size}`} aria-hidden="true">
      <span
        class={colours.some(isBeyondScreen) ? 'swatch-yarn swatch-beyond' : 'swatch-yarn'}
        style={{ background: yarnBackground(colours) }}
      />
    </span>
  )
}
