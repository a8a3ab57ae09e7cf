import './verdict-block.css'
import type { ComponentChildren } from 'preact'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'
import { VerdictSentence } from '#web/parts/verdict-sentence.tsx'

export type VerdictBlockProps = {
  readonly verdict: Verdict
  /** One sentence naming level and answer: “35 minutes of steam is enough.” One of many things is shown as a list. */
  readonly sentence: string
  /** In place of the sentence: the answer of each part of several. */
  readonly parts?: ComponentChildren
  /** The interval, the mean and the margin. */
  readonly lead?: ComponentChildren
  /** Counts and noise, one soft line. */
  readonly counts?: ComponentChildren
  /** The interval on its ruler, where the answer lies across the margin. */
  readonly ruler?: ComponentChildren
  /** The pair tile of the chosen level; on a desk it may stand in the margin column instead. */
  readonly pair?: ComponentChildren
  /** At most two buttons. */
  readonly buttons?: ComponentChildren
  /** Smaller, for the newest finding on the home page. */
  readonly small?: boolean
}

/** The answer of a trial, first on its page: mark, sentence, interval, counts, what to do next. */
export function VerdictBlock(props: VerdictBlockProps) {
  const { verdict, sentence, lead, counts, ruler, pair, buttons, small = false } = props
  const tile = pair === undefined ? null : <div class="verdict-block-pair">{pair}</div>
  return (
    <div class={small ? 'verdict-block verdict-block-small' : 'verdict-block'}>
      {small ? tile : null}
      <div class="verdict-block-answer">
        {props.parts === undefined ? <VerdictMark verdict={verdict} scale={small ? 1.2 : 2} /> : null}
        {props.parts ?? <VerdictSentence sentence={sentence} />}
      </div>
      {lead === undefined ? null : <p class="verdict-block-lead">{lead}</p>}
      {counts === undefined ? null : <p class="verdict-block-counts">{counts}</p>}
      {ruler === undefined ? null : <div class="verdict-block-ruler">{ruler}</div>}
      {small ? null : tile}
      {buttons === undefined ? null : <div class="verdict-block-buttons">{buttons}</div>}
    </div>
  )
}
