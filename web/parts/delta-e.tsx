import type { ComponentChildren } from 'preact'

/** The sign of a colour difference: `<DeltaE />` is ΔE₀₀, `<DeltaE kind="ab" />` the older ΔE*ab. */
export function DeltaE({ kind = '00' }: { readonly kind?: '00' | 'ab' | 'F' }) {
  return (
    <span>
      {kind === 'ab' ? 'ΔE*' : 'ΔE'}
      <sub>{kind}</sub>
    </span>
  )
}

/** A sentence as the API writes it, its “ΔE00” set with the noughts below the line. `<Sentence text={finding.sentence} />` */
export function Sentence({ text }: { readonly text: string }) {
  return <>{withDeltaE(text)}</>
}

/** Words with every “ΔE00” or “ΔE₀₀” set properly; all else as it is. */
export function withDeltaE(text: string): ComponentChildren {
  const pieces = text.split(/ΔE(?:00|₀₀)/)
  return pieces.flatMap((piece, place) => (place === 0 ? [piece] : [<DeltaE key={place} />, piece]))
}
