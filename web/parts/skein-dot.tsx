/** What a skein is in its trial, or that it was lost; each has a shape of its own. */
export type SkeinShape = 'treated' | 'blank' | 'twin' | 'known-good' | 'known-bleeder' | 'lost'

/**
 * A skein as it is drawn everywhere: treated lightly filled, blank open, twin half filled, known good a square, known bleeder
 * a triangle, lost a dashed ring with a slash. A word always stands beside it. `<SkeinDot shape="twin" /> dark twin`
 */
export function SkeinDot({ shape = 'treated' }: { readonly shape?: SkeinShape }) {
  return (
    <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true" style={{ flex: 'none' }}>
      <g stroke="var(--ink)" stroke-width="1.5" fill="var(--ink)" fill-opacity="0.22">
        <Shape shape={shape} />
      </g>
    </svg>
  )
}

function Shape({ shape }: { readonly shape: SkeinShape }) {
  switch (shape) {
    case 'treated':
      return <circle r="5" />
    case 'blank':
      return <circle r="5" fill="none" />
    case 'twin':
      return (
        <>
          <circle r="5" fill="none" />
          <path d="M0 -5A5 5 0 0 1 0 5Z" fill-opacity="1" stroke="none" />
        </>
      )
    case 'known-good':
      return <rect x="-4.5" y="-4.5" width="9" height="9" />
    case 'known-bleeder':
      return <path d="M0 -5.5L5.4 4.5H-5.4Z" />
    case 'lost':
      return (
        <>
          <circle r="5" fill="none" stroke-dasharray="2.6 2" />
          <path d="M-3.5 3.5L3.5 -3.5" fill="none" />
        </>
      )
  }
}
