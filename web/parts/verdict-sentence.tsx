import './verdict-block.css'

/** From so many letters on a headline of several things is easier to read as a list. */
const long = 90

/**
 * What a headline says of each thing, where it speaks of several at length; else the headline alone.
 *
 * @example
 * clausesOf('Moss passes: 5 of 5 lots; turquoise fails: staining of wool 2-3 (lot A); slate: 3 of 5 planned lots are in.') // ['Moss passes: 5 of 5 lots', 'turquoise fails: staining of wool 2-3 (lot A)', 'slate: 3 of 5 planned lots are in.']
 */
export function clausesOf(headline: string): readonly string[] {
  const clauses = headline.length < long ? [headline] : headline.replace(suffix, '.').split('; ')
  return clauses.length === 1 ? [headline] : clauses
}

/**
 * What stands behind a headline and counts for all of it: that dates are missing, or that the rule came late.
 *
 * @example
 * suffixOfHeadline('Not settled: 2 of 4 sessions (dates not recorded).') // 'Dates not recorded.'
 */
export function suffixOfHeadline(headline: string): string {
  const words = suffix.exec(headline)?.[1]
  return words === undefined ? '' : `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
}

const suffix = / \((dates not recorded|rule written after reading)\)\.$/

/** A headline, a line for each thing that it speaks of where there are several. */
export function VerdictSentence({ sentence }: { readonly sentence: string }) {
  const clauses = clausesOf(sentence)
  if (clauses.length === 1)
    return (
      <p
        class={
          sentence.length < long ? 'verdict-block-sentence' : 'verdict-block-sentence verdict-block-long'
        }
      >
        {sentence}
      </p>
    )
  return (
    <ul class="plain-list verdict-block-sentence verdict-block-long verdict-block-clauses">
      {clauses.map((clause, place) => (
        <li key={clause}>
          {clause}
          {place < clauses.length - 1 ? <span class="visually-hidden">; </span> : null}
        </li>
      ))}
      {suffixOfHeadline(sentence) === '' ? null : <li>{suffixOfHeadline(sentence)}</li>}
    </ul>
  )
}
