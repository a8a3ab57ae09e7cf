import './pair-tile.css'
import type { ComponentChildren } from 'preact'
import type { Lab } from '#api/science/colour/lab.ts'
import { isBeyondScreen, yarnBackground } from '#web/parts/yarn.ts'

export type PairTileProps = {
  /** Left out together when the skein was graded by eye: a colour is never made up. */
  readonly pair?: { readonly before: Lab; readonly after: Lab } | undefined
  readonly beforeWord?: string
  readonly afterWord?: string
  /** The level or the name of the skein. */
  readonly title?: ComponentChildren
  /** Lighter, duller, greener …; with `withinNoise` it says that no change can be told instead. */
  readonly words?: readonly string[]
  /** ΔE₀₀ and worst grade, or the grade by eye. */
  readonly figures?: ComponentChildren
  readonly withinNoise?: boolean
  readonly chosen?: boolean
  /** As high as in the margin beside a verdict. */
  readonly large?: boolean
}

/** Before | after on one grey, the words under it: `<PairTile pair={{ before, after }} title="35 min" words={words} figures="1.0" />` */
export function PairTile(props: PairTileProps) {
  const { pair, title, figures, chosen = false, large = false } = props
  const words = wordsOf(props)
  return (
    <figure class={large ? 'pair-tile pair-tile-large' : 'pair-tile'}>
      <div class="pair-tile-ground">
        {pair === undefined ? (
          <div class="pair-tile-unread" />
        ) : (
          <div
            class={isBeyond(pair) ? 'pair-tile-yarn pair-tile-beyond' : 'pair-tile-yarn'}
            style={{ background: yarnBackground([pair.before, pair.after]) }}
          />
        )}
      </div>
      <figcaption>
        <span class="pair-tile-ends">
          {pair === undefined ? (
            <span>graded by eye</span>
          ) : (
            <>
              <span>{props.beforeWord ?? 'before'}</span>
              <span>{props.afterWord ?? 'after'}</span>
            </>
          )}
        </span>
        {title === undefined ? null : (
          <span class={chosen ? 'pair-tile-title pair-tile-chosen' : 'pair-tile-title'}>{title}</span>
        )}
        {words === '' ? null : <span class="pair-tile-words">{words}</span>}
        {figures === undefined ? null : <span class="pair-tile-figures">{figures}</span>}
      </figcaption>
    </figure>
  )
}

function isBeyond({ before, after }: { before: Lab; after: Lab }): boolean {
  return isBeyondScreen(before) || isBeyondScreen(after)
}

function wordsOf({ pair, words = [], withinNoise = false }: PairTileProps): string {
  const change = withinNoise ? 'no change that can be told' : words.join(', ')
  if (pair === undefined || !isBeyond(pair)) return change
  const which = isBeyondScreen(pair.before)
    ? isBeyondScreen(pair.after)
      ? 'both are'
      : 'before is'
    : 'after is'
  const beyond = `cut corner: ${which} beyond this screen`
  return change === '' ? beyond : `${change}; ${beyond}`
}
